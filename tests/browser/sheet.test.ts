import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { settled, sideways } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();

/** A page between its margins [px]: 186 mm. */
const PAPER = { width: 703, height: 970 };

async function pagesOf(page: Page, format: "A4" | "Letter"): Promise<number> {
  const pdf = (await page.pdf({ format, preferCSSPageSize: true })).toString("latin1");
  return pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
}

/** @returns what of the sheet sticks out of the paper, or is cut by what it stands in */
const cut = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll(".sheet *:not(svg *)")].flatMap((element) => {
      if (element.closest(".visually-hidden")) return [];
      const { left, right, width } = element.getBoundingClientRect();
      const out = width > 0 && (left < -1 || right > document.documentElement.clientWidth + 1);
      return out ? [`${element.tagName} ${element.className} ${element.textContent?.slice(0, 40)}`] : [];
    }),
  );

async function saved(page: Page, button: string): Promise<string> {
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button }).click(),
  ]);
  return readFileSync(await file.path(), "utf8");
}

describe("Sheet", () => {
  it("prints on two pages of A4 and of Letter, nothing cut, and is kept as a page and as data", async () => {
    const page = await screens.open("/sheet/pane-crawler", { colorScheme: "dark" });
    await settled(page);
    for (const format of ["A4", "Letter"] as const)
      expect(await pagesOf(page, format), `pages of ${format}`).toBe(2);
    const verdict = (await page.locator("main h1").textContent()) ?? "";
    const over = page.getByRole("region", { name: "Over the joints" });
    expect(await over.locator("tbody th").first().textContent()).toMatch(/^Putty line/);
    expect(await over.locator("tbody td").count()).toBeGreaterThan(2);

    const data = JSON.parse(await saved(page, "Save as JSON"));
    expect(data.verdict.reason).toContain(verdict.replace(/\s/g, " "));
    expect(data.nextTests.length).toBeGreaterThan(0);
    expect(data.crossings[0].joint.depth).toBe(0.0003);

    const alone = await saved(page, "Save as a page");
    expect(alone).not.toMatch(/<script|<link|https?:\/\/127/);
    await page.emulateMedia({ media: "print" });
    await page.setViewportSize(PAPER);
    await eventually(() => cut(page)).toEqual([]);
    expect(await page.locator(".shell-header").isVisible()).toBe(false);
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
      "rgb(255, 255, 255)",
    );

    await page.goto("about:blank");
    await page.emulateMedia({ media: "screen" });
    await page.setContent(alone);
    expect(await page.locator("h1").textContent()).toBe(verdict);
    expect(await page.locator(".still svg .rings, .still svg [class*=ring]").count()).toBeGreaterThan(0);
    expect(await sideways(page)).toEqual([]);
  });

  it("of a build whose motor burns, made on a phone, prints on two pages all the same", async () => {
    const page = await screens.open("/sheet/prop-scout", { viewport: PHONE });
    await settled(page);
    expect(await sideways(page)).toEqual([]);
    expect(await pagesOf(page, "Letter")).toBe(2);
    expect(await page.locator(".sheet .bad-band").count()).toBe(1);
  });
});
