import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();

const textOf = async (locator: Locator) => ((await locator.textContent()) ?? "").replace(/\s/g, " ");

describe("Map", () => {
  it("opens with the demo, says how much holds, moves the build by keyboard, and follows another setting", async () => {
    const page = await screens.open("/map");
    const head = page.locator(".page-head");
    await eventually(() => textOf(head)).toMatch(
      /it holds with the margin wanted on \d+\s%.*This build at 44\.0\smm/,
    );
    await page.locator(".chart-field path, path.chart-field").first().waitFor();
    const reader = page.locator(".chart-reader");
    await reader.focus();
    await reader.press("Home");
    await eventually(() => reader.getAttribute("aria-valuetext")).toMatch(/^22\.0\smm/);
    await reader.press("Enter");
    await eventually(() => textOf(head)).toMatch(/This build at 22\.0\smm/);
    expect(page.url()).toMatch(/diameter=0\.022/);
    await page.getByRole("button", { name: "Back to the build as stored" }).click();
    await eventually(() => textOf(head)).toMatch(/This build at 44\.0\smm/);
    await page.getByLabel("Shown").selectOption("minutes");
    await page.locator(".map[aria-busy=false]").waitFor();
    await eventually(() => page.locator("svg[role=img]").getAttribute("aria-label")).toMatch(
      /^Map of minutes/,
    );
  });
});
