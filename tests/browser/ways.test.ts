import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();
const FALLING = "/match/ridge-runner";

/** The panel once its answer stands. */
async function waysOf(page: Page): Promise<string> {
  await page.locator('.ways[aria-busy="false"] .ways-list').waitFor();
  return (await page.locator(".ways").textContent()) ?? "";
}

const firstMargin = async (page: Page) =>
  Number.parseFloat((await page.locator(".attitude-tightest .margin").textContent()) ?? "");

describe("Ways to hold", () => {
  it("of a build that falls: says what does it, what does not, and what it costs", async () => {
    const page = await screens.open(FALLING);
    const said = await waysOf(page);
    expect(said).toMatch(/wanted\. (Any one of these does|One handle alone does) it/);
    expect(said).toMatch(/Mass ≤ \d+\sg/);
    expect(said).toMatch(/no value of this alone does it; [\d.]+\s× at best/);
    expect(said).toMatch(/rotor stress/);
  });

  it("with a way tried: sets the handle, and the worst attitude has what was wanted", async () => {
    const page = await screens.open(FALLING);
    await waysOf(page);
    await eventually(() => firstMargin(page)).toBeLessThan(1.5);
    await page.getByRole("button", { name: /try it.*Mass/ }).click();
    await page.waitForURL(/mass=/);
    await eventually(() => firstMargin(page)).toBeGreaterThanOrEqual(1.5);
    await page.locator(".ways").getByText("may go so far").waitFor();
    expect(await waysOf(page)).toMatch(/Mass up to \d+\sg/);
  });

  it("with another attitude and driving chosen: answers for that one", async () => {
    const page = await screens.open(FALLING);
    await waysOf(page);
    await page.getByLabel("Attitude that must hold").selectOption({ label: "Ceiling 180°" });
    await page.getByLabel("Parked or driving").selectOption("driving");
    await page.locator(".ways").getByText("for the ceiling, driving").waitFor();
    expect(await waysOf(page)).toMatch(/Wheel friction μ: no value of this alone does it/);
  });

  it("of a build that holds: says how far each handle may go", async () => {
    const page = await screens.open("/match/pane-crawler");
    expect(await waysOf(page)).toMatch(/Gap up to [\d.]+\smm/);
    await eventually(() => page.getByRole("button", { name: /try it/ }).count()).toBe(0);
  });
});

describe("What moves the margin", () => {
  it("draws a bar for each number, reads it aloud, and opens a table of all", async () => {
    const page = await screens.open("/match/pane-crawler");
    const chart = page.locator(".moves svg[role=img]");
    await chart.waitFor();
    await eventually(() => chart.getAttribute("aria-label")).toMatch(
      /^Per cent of margin per per cent of: .*mass −1\.00/,
    );
    await eventually(() => chart.locator("rect.chart-bar").count()).toBe(10);
    await page.getByText("Every number as a table").click();
    await page.locator(".moves tbody tr").first().waitFor();
    await eventually(() => page.locator(".moves tbody tr").count()).toBeGreaterThan(15);
  });

  it("with the uncertainty worked out: gives each number's share of it", async () => {
    const page = await screens.open("/match/pane-crawler");
    await page.locator(".moves text.chart-bar-figure", { hasText: "of the uncertainty" }).first().waitFor();
  });

  it("on a phone: never scrolls sideways, nothing is cut off", async () => {
    const page = await screens.open(FALLING, { viewport: PHONE });
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
