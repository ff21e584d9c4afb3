import { readFile } from "node:fs/promises";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();

const textOf = async (locator: Locator) => ((await locator.textContent()) ?? "").replace(/\s/g, " ");
const table = (page: Page) => page.locator(".fall-table");

async function ready(path: string, options = {}): Promise<Page> {
  const page = await screens.open(path, options);
  await table(page).waitFor();
  return page;
}

describe("Run-down", () => {
  it("answers for a demo build, worked out in a thread of its own, with sentence, alarm, picture and table", async () => {
    const page = await ready("/run-down/roof-crawler");
    expect(await textOf(page.locator("main h1"))).toMatch(
      /^It stops holding the worst overhang after .*, at \d\.\d V\.$/,
    );
    expect(await textOf(page.locator(".answer-figures"))).toMatch(
      /Low-voltage alarm: at least \d\.\d\d V a cell.*charge ends after/,
    );
    expect(await page.locator(".chart > svg > svg").count()).toBe(4);
    expect(page.workers().length).toBe(1);
  });

  it("answers anew, with less charge at the start, and says what can't be, with text, keeping the answer", async () => {
    const page = await ready("/run-down/pane-crawler");
    const minutes = async () =>
      Number(/charge ends after ([\d.]+) minutes/.exec(await textOf(page.locator(".answer-figures")))?.[1]);
    const full = await minutes();
    const charge = page.getByLabel("Charge at the start, %", { exact: true });
    await charge.fill("50");
    await page.locator(".rundown[aria-busy=false]").waitFor();
    await expect.poll(minutes).toBeLessThan(0.6 * full);
    const half = await minutes();
    await charge.fill("lots");
    expect(await textOf(page.locator(".run-slider .field-error"))).toMatch(/Read “lots”.*for example/);
    expect(await minutes()).toBe(half);
  });

  it("saves the whole picture as numbers, with CSV chosen, a margin for each attitude", async () => {
    const page = await ready("/run-down/pane-crawler");
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "CSV" }).click(),
    ]);
    const [head, ...rows] = (await readFile(await saved.path(), "utf8")).trim().split("\r\n");
    expect(head).toMatch(/time \(min\).*winding \(°C\).*margin, Ceiling/);
    expect(rows.length).toBeGreaterThan(50);
  });

  it("fits a phone, with 390 px, and what it means comes before the picture", async () => {
    const page = await ready("/run-down/pane-crawler", { viewport: PHONE });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
    const [meaning, picture] = await Promise.all(
      [table(page), page.locator(".chart")].map((each) => each.boundingBox()),
    );
    expect(meaning?.y).toBeLessThan(picture?.y ?? 0);
  });
});
