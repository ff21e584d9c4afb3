import { readFile } from "node:fs/promises";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
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
  it("answers for a demo build, worked out in threads of their own, with sentence, alarm, picture and table", async () => {
    const page = await ready("/run-down/roof-crawler");
    await eventually(() => textOf(page.locator("main h1"))).toMatch(/^Falls from the overhang/);
    await eventually(() => textOf(page.locator(".answer-figures"))).toMatch(
      /^It stops holding the worst overhang after .*, at \d\.\d\sV\. /,
    );
    await eventually(() => textOf(page.locator(".answer-figures"))).toMatch(
      /Low-voltage alarm: at least \d\.\d\d V a cell.*From a full charge it runs/,
    );
    // Margins; voltage, speed, pressure, winding.
    await eventually(() => page.locator(".chart g.panel").count()).toBe(5);
    await page.locator(".limit-table").first().waitFor();
    // What follows a setting, and what may take seconds.
    await eventually(() => page.workers().length).toBe(2);
  });

  it("answers anew, with less charge at the start, and says what can't be, with text, keeping the answer", async () => {
    const page = await ready("/run-down/pane-crawler");
    const minutes = async () =>
      Number(/charge it runs ([\d.]+) minutes/.exec(await textOf(page.locator(".answer-figures")))?.[1]);
    const full = await minutes();
    const charge = page.getByLabel("Charge at the start, %", { exact: true });
    await charge.fill("50");
    await page.locator(".rundown[aria-busy=false]").waitFor();
    await eventually(minutes).toBeLessThan(0.6 * full);
    const half = await minutes();
    await charge.fill("lots");
    await eventually(() => textOf(page.locator(".setting-field .field-error"))).toMatch(
      /Read "lots".*for example/,
    );
    await eventually(minutes).toBe(half);
  });

  it("with a controller that keeps a margin: minutes side by side, what to set, the throttle in the picture; the address keeps it", async () => {
    const page = await ready("/run-down/pane-crawler");
    await page.getByLabel("a controller keeps a margin").check();
    await eventually(() => textOf(page.locator(".answer-figures"))).toMatch(
      /Holds for [\d.]+ min keeping 1\.50 × on the worst attitude, [\d.]+ min at full throttle\. Set the controller to \d+ Pa/,
    );
    await eventually(() => page.locator(".course-table tbody tr").count()).toBe(2);
    await eventually(() => page.locator(".chart g.panel").count()).toBe(6);
    expect(page.url()).toContain("keep=1.5%40worst");
    await page.getByLabel("a controller keeps a suction").check();
    await page.getByLabel("Suction to keep, Pa", { exact: true }).fill("900");
    await eventually(() => textOf(page.locator(".answer-figures"))).toMatch(/Set the controller to 900 Pa/);
  });

  it("saves the whole picture as numbers, with CSV chosen, a margin for each attitude", async () => {
    const page = await ready("/run-down/pane-crawler");
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "CSV" }).first().click(),
    ]);
    const [head, ...rows] = (await readFile(await saved.path(), "utf8")).trim().split("\r\n");
    expect(head).toMatch(/time \[min\].*winding \[°C\].*margin, Ceiling/);
    expect(rows.length).toBeGreaterThan(50);
  });

  it("fits a phone, with 390 px, and what it means comes before the picture", async () => {
    const page = await ready("/run-down/pane-crawler", { viewport: PHONE });
    await eventually(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      PHONE.width,
    );
    const below = async () => {
      const [meaning, picture] = await Promise.all(
        [table(page), page.locator(".chart").first()].map((each) => each.boundingBox()),
      );
      return (picture?.y ?? 0) - (meaning?.y ?? Number.NaN);
    };
    await eventually(below).toBeGreaterThan(0);
  });

  it("says what burns or bursts first, with every limit in words and its caution, and the winding's picture saved as numbers", async () => {
    const page = await ready("/run-down/pane-crawler");
    await page.locator(".limit-table").first().waitFor();
    await eventually(() => textOf(page.locator(".limits-answer"))).toMatch(
      /^Nothing burns or bursts: nearest is/,
    );
    await eventually(() => page.locator(".limit-table tbody th[scope=row]").count()).toBe(9);
    await eventually(() => textOf(page.locator(".limit-table").first())).toMatch(
      /Winding, once settled.*limit 120 °C.*within, \d+ % of the way/,
    );
    await eventually(() => page.locator(".limit-group .caution").count()).toBe(4);
    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      page.locator(".limits").getByRole("button", { name: "CSV" }).click(),
    ]);
    const [head, ...samples] = (await readFile(await saved.path(), "utf8")).trim().split("\r\n");
    expect(head).toBe("time from cold [s],winding [°C]");
    expect(samples.length).toBeGreaterThan(50);
  });

  it("with two cells more than Match's build says when the motor burns, and a link from Match leads there", async () => {
    const page = await screens.open("/match/pane-crawler?series=4");
    await page.getByRole("link", { name: "What burns or bursts first" }).click();
    await page.locator(".limit-table").first().waitFor();
    await eventually(() => textOf(page.locator(".limits-answer"))).toMatch(
      /^The winding reaches 120\s°C after \d+ s from cold: the motor burns first\. At \d\.\d\d × the motor's rated voltage/,
    );
    await eventually(() => page.locator(".limits .chart-line.dashed").count()).toBe(1);
    const top = () => page.locator("#limits").evaluate((element) => element.getBoundingClientRect().top);
    await eventually(top).toBeLessThan(200);
  });
});
