import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { lookedThrough } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();
const FALLING = "/match/ridge-runner";

/** Ways to hold once their answer stands. */
async function waysOf(page: Page): Promise<string> {
  await page.locator('.ways[aria-busy="false"] .ways-list').waitFor();
  return (await page.locator(".ways").textContent()) ?? "";
}

/** The next test once its answer stands. */
async function nextOf(page: Page): Promise<string> {
  await page.locator('.next-test[aria-busy="false"] .next-tests').first().waitFor();
  return (await page.locator(".next-test").textContent()) ?? "";
}

async function choose(page: Page, attitude: string, mode: "parked" | "driving"): Promise<void> {
  await page.getByLabel("Attitude that must hold").selectOption({ label: attitude });
  await page.getByLabel("Parked or driving").selectOption(mode);
}

const firstMargin = async (page: Page) =>
  Number.parseFloat((await page.locator(".attitude-tightest .margin").textContent()) ?? "");

describe("under the picture of a build that falls", () => {
  it("Ways to hold say what does it, for the attitude that is chosen; a way tried sets the handle and has what was wanted", async () => {
    const page = await screens.open(FALLING);
    await lookedThrough(page);
    const said = await waysOf(page);
    expect(said).toMatch(/wanted\. (Any one of these|One setting alone) works/);
    expect(said).toMatch(/Mass\d+\sg≤ \d+\sg/);
    expect(said).toMatch(/no value of this alone works; [\d.]+\s× at best/);
    expect(said).toMatch(/rotor stress/);
    await choose(page, "Ceiling 180°", "driving");
    await page.locator(".ways").getByText("for the ceiling, driving").waitFor();
    expect(await waysOf(page)).toMatch(/Wheel friction μ[\d.]+no value of this alone works/);
    await choose(page, "Worst attitude", "parked");
    await page.locator(".ways").getByText("for the worst attitude").waitFor();
    await eventually(() => firstMargin(page)).toBeLessThan(1.5);
    await page.getByRole("button", { name: /try it.*Mass/ }).click();
    await page.waitForURL(/mass=/);
    await eventually(() => firstMargin(page)).toBeGreaterThanOrEqual(1.5);
    await page.locator(".ways").getByText("may go so far").waitFor();
    expect(await waysOf(page)).toMatch(/Mass\d+\sgup to \d+\sg/);
  });

  it("on a phone: never scrolls sideways, nothing is cut off", async () => {
    const page = await screens.open(FALLING, { viewport: PHONE });
    await lookedThrough(page);
    await waysOf(page);
    await page.locator(".moves svg[role=img]").waitFor();
    await eventually(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
    const over = () =>
      page.locator(".moves svg text").evaluateAll((all) =>
        all.filter((text) => {
          const box = text.getBoundingClientRect();
          return box.left < 0 || box.right > innerWidth;
        }),
      );
    await eventually(over).toEqual([]);
  });
});

describe("under the picture of a build that holds", () => {
  it("stand how far each handle may go, what moves the margin, and the next test for the chosen attitude, which leads to its form", async () => {
    const page = await screens.open("/match/pane-crawler");
    await page.locator(".moves").waitFor();
    expect(await page.evaluate(() => scrollY), "worked out without being looked at").toBe(0);
    expect(await waysOf(page)).toMatch(/Gap[\d.]+\smmup to [\d.]+\smm/);
    await eventually(() => page.getByRole("button", { name: /try it/ }).count()).toBe(0);
    const chart = page.locator(".moves svg[role=img]");
    await eventually(() => chart.getAttribute("aria-label")).toMatch(
      /^Per cent of margin per per cent of: .*mass −1\.00/,
    );
    await eventually(() => chart.locator("rect.chart-bar").count()).toBe(10);
    await page.locator(".moves text.chart-bar-figure", { hasText: "of the uncertainty" }).first().waitFor();
    await page.getByText("Every number as a table").click();
    await eventually(() => page.locator(".moves tbody tr").count()).toBeGreaterThan(15);
    const said = await nextOf(page);
    expect(said).toMatch(
      / first: it would take \d+\s% off the uncertainty about the worst attitude at \d+°, over the putty line\./,
    );
    expect(said).toMatch(/[\d.]+ ± [\d.]+ → ± [\d.]+/);
    await choose(page, "Ceiling 180°", "driving");
    await page.getByText("off the uncertainty about the ceiling at 180°, driving").waitFor();
    await page
      .locator(".next-test")
      .getByRole("link", { name: /log it/ })
      .first()
      .click();
    await page.waitForURL(({ pathname }) => /^\/bench\/new\/\w+$/.test(pathname));
    await page.getByRole("heading", { level: 1 }).waitFor();
  });

  it("of a propeller on a phone: a next test is named too, and nothing scrolls sideways", async () => {
    const page = await screens.open("/match/prop-scout", { viewport: PHONE });
    await lookedThrough(page);
    expect(await nextOf(page)).toMatch(/ first: it would take/);
    await eventually(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  });
});
