import { describe, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();

describe("a mark beside a figure", () => {
  it("says what it means on hover, focus and click; Escape takes it away; the demo's hints are dismissed for good", async () => {
    const page = await screens.open("/match/pane-crawler");
    const mark = page.locator(".verdict-marks .mark").first();
    await mark.waitFor();
    const words = page.locator(".explanation");
    const said = () => words.allTextContents();
    await mark.hover();
    await eventually(async () => (await said()).join()).toMatch(/no test of your own/);
    await page.mouse.move(0, 0);
    await eventually(said).toEqual([]);
    await mark.click();
    await eventually(() => words.count()).toBe(1);
    await page.keyboard.press("Escape");
    await eventually(said).toEqual([]);
    await mark.focus();
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Tab");
    await eventually(() => words.count()).toBe(1);

    await page.getByRole("button", { name: "Dismiss these hints" }).click();
    await page.locator(".match-hints").waitFor({ state: "detached" });
    await page.reload();
    await mark.waitFor();
    await eventually(() => page.locator(".match-hints").count()).toBe(0);
  });
});
