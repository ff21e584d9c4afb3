import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { SCREENS } from "#shared/model/screens.ts";
import { axeFindings, settled, sideways, unfold } from "./support/audit.ts";
import { eventually } from "./support/eventually.ts";
import { LAPTOP, PHONE, useScreens, ZOOMED } from "./support/page.ts";

const screens = useScreens();

/** Every view as its link in the navigation opens it, and what else of it has a screen of its own. */
const ADDRESSES = [
  ...SCREENS.map((screen) => `/${screen}`),
  "/bench/new/curve",
  "/bench/new/pull",
  "/bench/import",
  "/parts/rotors/swept-nine",
  "/parts/builds/pane-crawler",
  "/curves/rotors/swept-nine",
  "/curves/skirts/foam-lip",
  "/curves/surfaces/side-pane",
  "/match/prop-scout",
];

/** Judges the page in both themes, on a laptop and on a phone. */
async function expectNoFinding(page: Page): Promise<void> {
  for (const size of [LAPTOP, PHONE]) {
    await page.setViewportSize(size);
    await settled(page);
    await unfold(page);
    // A chart takes its new width a moment after its place does.
    await eventually(() => sideways(page)).toEqual([]);
    expect(await axeFindings(page), `${size.width} px, light`).toEqual([]);
    await page.emulateMedia({ colorScheme: "dark" });
    expect(await axeFindings(page, "colour"), `${size.width} px, dark`).toEqual([]);
    await page.emulateMedia({ colorScheme: "light" });
  }
  await page.setViewportSize(ZOOMED);
  await eventually(() => sideways(page), `sideways at ${ZOOMED.width} px`).toEqual([]);
}

describe("every view, both themes, on a laptop and on a phone", () => {
  it.each(ADDRESSES)(
    "%s, with everything unfolded: axe finds nothing, and nothing sticks out sideways, four times zoomed in as well",
    async (path) => {
      await expectNoFinding(await screens.open(path));
    },
  );
});

describe("screens that an action leads to, both themes, on a laptop and on a phone", () => {
  it("a test form with every field refused: axe finds nothing", async () => {
    const page = await screens.open("/bench/new/motor");
    const inputs = page.locator(".bench-form input[type=text]:visible");
    for (let i = 0; i < (await inputs.count()); i++) await inputs.nth(i).fill("rubbish");
    await page.getByRole("button", { name: "Save the test" }).click();
    await page.locator(".bench-summary").waitFor();
    await expectNoFinding(page);
  });

  it("a reading chosen in Curves: axe finds nothing", async () => {
    const page = await screens.open("/curves/rotors/swept-nine");
    await page.locator(".chart-reader").first().focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await page.locator(".curves-point.chosen").waitFor();
    await expectNoFinding(page);
  });

  it("the question before a part goes: axe finds nothing", async () => {
    const page = await screens.open("/parts/rotors/swept-nine");
    await page.getByRole("button", { name: "Delete", exact: true }).click();
    await page.getByRole("button", { name: "Yes, delete" }).waitFor();
    await expectNoFinding(page);
  });

  it("a search with its results, two of them pinned: axe finds nothing", async () => {
    const page = await screens.open("/choose");
    await page.getByRole("button", { name: /^Solve/ }).click();
    await page.locator(".choose-table tbody tr.choose-row th").first().waitFor();
    await page.getByRole("button", { name: "pin", exact: true }).nth(0).click();
    await page.getByRole("button", { name: "pin", exact: true }).nth(1).click();
    await page.getByRole("group", { name: "Pinned combinations side by side" }).waitFor();
    await expectNoFinding(page);
  });
});
