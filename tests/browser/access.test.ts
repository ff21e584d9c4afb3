import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { settled, sideways } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();

/** More controls than any view has. */
const MOST_STOPS = 250;

/** @returns name of the focused control where nothing of it is in sight, null where some of it is; false where the page itself has the focus */
const hidden = (page: Page): Promise<string | null | false> =>
  page.evaluate(() => {
    const control = document.activeElement;
    if (!control || control === document.body) return false;
    const { left, top, width, height } = control.getBoundingClientRect();
    const shares = [0.1, 0.3, 0.5, 0.7, 0.9];
    const isSeen = shares.some((x) =>
      shares.some((y) => {
        const hit = document.elementFromPoint(left + x * width, top + y * height);
        return hit !== null && (control.contains(hit) || hit.contains(control));
      }),
    );
    return isSeen ? null : (control.textContent || control.id || control.tagName).slice(0, 60);
  });

/** @returns the controls of which nothing is in sight when the tab key comes to them: WCAG 2.2, 2.4.11 */
async function hiddenStops(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    await page.keyboard.press("Tab");
    const name = await hidden(page);
    if (name === false) return found;
    if (name !== null) found.push(name);
  }
  throw new Error("The tab key comes to no end.");
}

describe("the focus on a phone, tabbed through a form whose buttons stick to the bottom", () => {
  it.each(["/bench/new/curve", "/choose"])("%s: is never wholly under them", async (path) => {
    const page = await screens.open(path);
    await page.setViewportSize({ width: 320, height: 568 });
    await settled(page);
    expect(await hiddenStops(page)).toEqual([]);
  });
});

describe("a page whose reader sets letters and words further apart: WCAG 2.2, 1.4.12", () => {
  it("Match on a phone: names and figures of bars keep clear of each other, and nothing sticks out", async () => {
    const page = await screens.open("/match");
    await page.evaluate(() => {
      const own = new CSSStyleSheet();
      own.replaceSync(
        "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }",
      );
      document.adoptedStyleSheets.push(own);
    });
    await page.setViewportSize(PHONE);
    await settled(page);
    await page.locator(".chart-bar-figure").first().waitFor();
    const gaps = () =>
      page.evaluate(() => {
        const figures = [...document.querySelectorAll(".chart-bar-figure")];
        return [...document.querySelectorAll(".chart-bar-name")].map((name, row) =>
          Math.round(figures[row].getBoundingClientRect().left - name.getBoundingClientRect().right),
        );
      });
    await eventually(async () => Math.min(...(await gaps()))).toBeGreaterThanOrEqual(0);
    expect(await sideways(page)).toEqual([]);
  });
});

describe("colours of the reader's own system in place of ours", () => {
  it("Curves: the part that is shown stands out from the others by its ground, and they have no bar", async () => {
    const page = await screens.open("/curves/rotors/swept-nine");
    await page.emulateMedia({ forcedColors: "active" });
    const looks = await page.evaluate(() =>
      [".curves-parts a[aria-current]", ".curves-parts a:not([aria-current])"].map((which) => {
        const link = document.querySelector(which);
        if (!link) throw new Error(`There is no ${which}.`);
        const { backgroundColor, borderLeftColor } = getComputedStyle(link);
        return { ground: backgroundColor, bar: borderLeftColor };
      }),
    );
    const canvas = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    expect(looks[0].ground).not.toBe(looks[1].ground);
    expect(looks[1].bar).toBe(canvas);
  });
});
