import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { PHONE, useScreens } from "./support/page.ts";

const screens = useScreens();

/** The panel once its answer stands. */
async function nextOf(page: Page): Promise<string> {
  await page.locator('.next-test[aria-busy="false"] .next-tests').first().waitFor();
  return (await page.locator(".next-test").textContent()) ?? "";
}

describe("Next test", () => {
  it("of a build with numbers: says what to do first, what would be known then, and leads to it", async () => {
    const page = await screens.open("/match/pane-crawler");
    const said = await nextOf(page);
    expect(said).toMatch(/ first: it would take \d+\s% off the doubt about the worst attitude at \d+°\./);
    expect(said).toMatch(/[\d.]+ ± [\d.]+ → ± [\d.]+/);
    await page
      .locator(".next-test")
      .getByRole("link", { name: /log it/ })
      .first()
      .click();
    await page.waitForURL(({ pathname }) => /^\/bench\/new\/\w+$/.test(pathname));
    await page.getByRole("heading", { level: 1 }).waitFor();
  });

  it("with another attitude chosen at Ways to hold: speaks of the same one", async () => {
    const page = await screens.open("/match/pane-crawler");
    await nextOf(page);
    await page.getByLabel("Attitude that must hold").selectOption({ label: "Ceiling 180°" });
    await page.getByLabel("Parked or driving").selectOption("driving");
    await page.getByText("off the doubt about the ceiling at 180°, driving").waitFor();
  });

  it("of a propeller on a phone: names a test too, and nothing scrolls sideways", async () => {
    const page = await screens.open("/match/prop-scout", { viewport: PHONE });
    expect(await nextOf(page)).toMatch(/ first: it would take/);
    await eventually(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
  });
});
