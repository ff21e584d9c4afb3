import { describe, expect, it } from "vitest";
import { eventually } from "./support/eventually.ts";
import { useScreens } from "./support/page.ts";

const screens = useScreens();

describe("the drive cycle in Run-down", () => {
  it("is tried at once and stands in the address, with a current typed; refused while the shares are not the whole", async () => {
    const page = await screens.open("/run-down/pane-crawler");
    const said = page.locator(".answer-figures");
    await eventually(() => said.textContent()).toMatch(/^On its drive cycle the pull is enough/);
    const before = await page.locator(".answer-figures").textContent();
    await page.getByLabel("Drive, A").first().fill("6");
    await eventually(() => page.locator(".answer-figures").textContent()).not.toBe(before);
    await eventually(() => new URL(page.url()).searchParams.get("cycle")).toBe(
      "90:45:6,153:25:0.7,153:30:parked",
    );
    await page.getByLabel("Time, %").first().fill("40");
    await expect
      .poll(() => page.locator(".cycle .field-error").textContent())
      .toMatch(/add up to 95.0.%; they must add up to 100.%/);
    await eventually(() => page.getByRole("button", { name: "Save to the build" }).isDisabled()).toBe(true);
    await page.getByRole("button", { name: "As the build has it" }).click();
    await eventually(() => page.url()).not.toMatch(/cycle/);
    await eventually(() => page.locator(".answer-figures").textContent()).toBe(before);
  });

  it("comes back from the address, with charge and wanted margin", async () => {
    const page = await screens.open("/run-down/pane-crawler?start=60&wanted=1.2&cycle=steady");
    await eventually(() => page.locator(".answer-figures").textContent()).toMatch(/^The pull is enough/);
    await eventually(() => page.getByLabel("Charge at the start, %", { exact: true }).inputValue()).toBe(
      "60",
    );
    await eventually(() => page.getByLabel("Margin wanted, ×", { exact: true }).inputValue()).toBe("1.2");
  });
});

describe("a pack in Curves", () => {
  it("draws its discharge test with curve, sags and residuals, and reads a point aloud", async () => {
    const page = await screens.open("/curves/packs/one-cell-650");
    await eventually(() => page.locator("main h1").textContent()).toMatch(/gives .*mAh and falls from/);
    await page.locator(".chart-figure .chart-mark").first().waitFor();
    await eventually(() => page.locator(".chart-figure").count()).toBe(2);
    await page.locator(".chart-reader").first().focus();
    await page.keyboard.press("Home");
    await page.keyboard.press("Enter");
    await page.locator(".curves-point.chosen").waitFor();
    await eventually(() => page.locator(".curves-point.chosen").textContent()).toMatch(
      /voltage.*current.*drawn.*mAh/,
    );
  });
});
