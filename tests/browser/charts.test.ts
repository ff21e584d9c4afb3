import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { LAPTOP, PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();

const WITH_CHARTS = [
  "/curves/rotors/swept-nine",
  "/curves/motors/bell-18",
  "/curves/packs/one-cell-650",
  "/curves/skirts/felt-ring",
  "/curves/surfaces/ridge-board",
  "/run-down",
];

/** Nothing in a chart is set smaller [px]. */
const LEAST_TYPE = 13.5;

/** What is wrong with the words of the page's charts: too small, over one another, or cut at the page's edge. */
async function wordFaults(page: Page): Promise<string[]> {
  return page.locator("svg[role=img]").evaluateAll((charts, least) => {
    const SLACK = 2;
    return charts.flatMap((chart) => {
      const words = [...chart.querySelectorAll("text")]
        .filter((text) => (text.textContent ?? "") !== "")
        .map((text) => ({ text: text.textContent, box: text.getBoundingClientRect(), element: text }));
      const small = words
        .filter(({ element }) => Number.parseFloat(getComputedStyle(element).fontSize) < least)
        .map(({ text }) => `too small: ${text}`);
      const out = words
        .filter(({ box }) => box.left < -SLACK || box.right > innerWidth + SLACK)
        .map(({ text }) => `off the page: ${text}`);
      const over = words.flatMap((one, i) =>
        words.slice(i + 1).flatMap((other) => {
          const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
          const up = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
          return across > SLACK && up > SLACK + 1 ? [`${one.text} lies on ${other.text}`] : [];
        }),
      );
      return [...small, ...out, ...over];
    });
  }, LEAST_TYPE);
}

/** How many charts are wider than the page. */
const tooWide = (page: Page): Promise<number> =>
  page
    .locator("svg[role=img]")
    .evaluateAll(
      (charts) => charts.filter((chart) => chart.getBoundingClientRect().width > innerWidth).length,
    );

describe("words of charts, on a laptop and on a phone", () => {
  it.each(WITH_CHARTS)("%s: none is small, none lies on another, none is cut", async (path) => {
    const page = await screens.open(path);
    await page.locator("svg[role=img] text").first().waitFor();
    for (const viewport of [LAPTOP, PHONE]) {
      await page.setViewportSize(viewport);
      // A chart takes its new width a moment after its place does.
      await eventually(() => tooWide(page)).toBe(0);
      await eventually(() => wordFaults(page)).toEqual([]);
    }
  });
});

describe("a chart with many readings", () => {
  /** Ends of the flow axis as it is numbered. */
  const numbers = (page: Page) =>
    page.locator(".chart").first().locator(".layer-axis-bottom .tick-text").allTextContents();

  it("comes nearer by keys, moves, and is whole again", async () => {
    const page = await screens.open("/curves/rotors/swept-nine");
    await page.locator(".chart-reader").first().focus();
    const whole = await numbers(page);
    await page.keyboard.press("+");
    await page.keyboard.press("+");
    await eventually(() => numbers(page)).not.toEqual(whole);
    const near = await numbers(page);
    await page.keyboard.press("Shift+ArrowRight");
    await eventually(() => numbers(page)).not.toEqual(near);
    await page.keyboard.press("0");
    await eventually(() => numbers(page)).toEqual(whole);
  });

  it("shows the part that the mouse marks, and by a button the whole again", async () => {
    const page = await screens.open("/curves/rotors/swept-nine");
    const reader = page.locator(".chart-reader").first();
    await reader.scrollIntoViewIfNeeded();
    const box = await reader.boundingBox();
    if (!box) throw new Error("The chart is not on the screen.");
    const whole = await numbers(page);
    await page.mouse.move(box.x + 0.3 * box.width, box.y + 0.3 * box.height);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.5 * box.width, box.y + 0.6 * box.height, { steps: 4 });
    await page.locator(".chart-box").waitFor();
    await page.mouse.up();
    await eventually(() => numbers(page)).not.toEqual(whole);
    await page.getByRole("button", { name: "Whole picture" }).click();
    await eventually(() => numbers(page)).toEqual(whole);
  });
});

describe("a chart saved from a phone", () => {
  it("is as wide as from a laptop, with every name in it, its sentence as title", async () => {
    const page = await screens.open("/curves/rotors/swept-nine", { viewport: PHONE });
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator(".save-chart").first().getByRole("button", { name: "SVG" }).click(),
    ]);
    const svg = readFileSync(await download.path()).toString();
    expect(svg).toMatch(/<svg [^>]*width="984"/);
    expect(svg).toMatch(/<title>Pressure of Swept nine against flow/);
    expect(svg.match(/Swept nine, \d\d mm at/g)).toHaveLength(4);
    expect(svg).toContain('stroke="rgb(10, 106, 106)"');
  });
});

describe("a chart that is read along its axis", () => {
  it("says all of a moment, by keyboard and by touch, and keeps it until something else is touched", async () => {
    const page = await screens.open("/run-down", { viewport: PHONE, hasTouch: true });
    const reader = page.getByRole("slider", { name: /^Moments of the run/ });
    await reader.focus();
    await page.keyboard.press("End");
    const words = page.locator(".chart-tooltip");
    await eventually(() => words.textContent()).toMatch(/After [\d.]+ minutes, .*pack .*rpm/);
    await eventually(() => reader.getAttribute("aria-valuetext")).toMatch(/After [\d.]+ minutes/);
    await page.keyboard.press("Escape");
    await eventually(() => words.count()).toBe(0);
    const box = await reader.boundingBox();
    if (!box) throw new Error("The chart is not on the screen.");
    await page.touchscreen.tap(box.x + 0.4 * box.width, box.y + 60);
    await eventually(() => words.count()).toBe(1);
    await page.locator("main h1").tap();
    await eventually(() => words.count()).toBe(0);
  });
});
