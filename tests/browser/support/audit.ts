import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { eventually } from "./eventually.ts";

/** The checker itself, run inside the page. */
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Results {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

/** Rows of a long table are alike: the first few are judged for all. */
const MORE_OF_THE_SAME = ".data-table-scroll tbody tr:nth-child(n + 6)";
/** What depends on the theme; everything else is judged once. */
const COLOUR_RULES = ["color-contrast", "link-in-text-block"];

/** WCAG 2.2 A and AA and axe's best practices, with the two rules of these that axe leaves off unless asked. */
const OPTIONS = {
  resultTypes: ["violations"],
  // Style sheets are read for rules that aren't asked.
  preload: { assets: ["media"] },
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
  rules: { "target-size": { enabled: true }, "label-content-name-mismatch": { enabled: true } },
};

/** Looks down the whole page: panels that wait to be looked at are fetched. */
export async function lookedThrough(page: Page): Promise<void> {
  const left = () =>
    page.evaluate(() => {
      const places = document.querySelectorAll(".later-place");
      places[0]?.scrollIntoView();
      return places.length;
    });
  await eventually(left).toBe(0);
  await page.evaluate(() => scrollTo(0, 0));
}

/** @returns once the whole page is there and nothing on it is being worked out any more */
export async function settled(page: Page): Promise<void> {
  await lookedThrough(page);
  await eventually(() => page.locator("[aria-busy=true], [role=progressbar], progress").count()).toBe(0);
}

/** Opens everything that folds, so that it is judged as well. */
export async function unfold(page: Page): Promise<void> {
  await page.locator("main details:not([open])").evaluateAll((folds) => {
    for (const fold of folds) (fold as HTMLDetailsElement).open = true;
  });
}

/**
 * @param judged - every rule, or those of colour alone
 * @returns what axe finds wrong with the page as it stands, a line each: rule, then the element
 */
export async function axeFindings(page: Page, judged: "all" | "colour" = "all"): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(AXE);
  // Half under the bar at the top, a button that is large enough counts as small.
  await page.evaluate(() => scrollTo(0, 0));
  const { violations } = await page.evaluate(
    ({ context, options }) => {
      const { run } = (window as unknown as { axe: { run: (...of: unknown[]) => Promise<Results> } }).axe;
      return run(context, options);
    },
    {
      context: { exclude: [MORE_OF_THE_SAME] },
      options: judged === "all" ? OPTIONS : { ...OPTIONS, rules: {}, runOnly: COLOUR_RULES },
    },
  );
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
}

/** @returns what makes the page scroll sideways, an element a line with where it ends [px]; empty where it doesn't */
export const sideways = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const { clientWidth, scrollWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    const isShown = (element: Element | null): boolean =>
      !element ||
      element === document.body ||
      (getComputedStyle(element).overflowX === "visible" && isShown(element.parentElement));
    const out = [...document.querySelectorAll("body *")].filter((element) => {
      const { width, right } = element.getBoundingClientRect();
      return width > 0 && right > clientWidth + 1 && isShown(element.parentElement);
    });
    const lines = out.map((element) => {
      const { tagName, className, textContent } = element as HTMLElement;
      return `${tagName}.${className}: ${Math.round(element.getBoundingClientRect().right)}, ${textContent?.slice(0, 40)}`;
    });
    return lines.length > 0 ? lines.slice(0, 5) : [`the page: ${scrollWidth} of ${clientWidth}`];
  });
