import { describe, expect, it } from "vitest";
import { shownInWorking } from "#client/ui/working/workingText.ts";

describe("a number of a working, by its SI unit", () => {
  // 1 rad/s = 30/π rpm; 1 m² = 10⁴ cm²: by definition.
  it.each([
    [0.0006, "m", "0.6 mm"],
    [0.004, "m²", "40 cm²"],
    [0.00162, "m³/s", "1.62 L/s"],
    [0.18, "kg", "180 g"],
    [2513.274, "rad/s", "24000 rpm"],
    [2e-4, "N·m", "0.2 mN·m"],
    [2.3e-5, "m³/(s·Pa^x)", "0.023 L/(s·Pa^x)"],
    [640.25, "Pa", "640.25 Pa"],
    [1.81e-5, "Pa·s", "1.8100e-5 Pa·s"],
    [0, "m", "0 mm"],
    [0.612345, "", "0.61235"],
  ])("%s %s stands as %s, in the screen's unit", (value, unit, text) => {
    expect(shownInWorking(value, unit).replace("\u202f", " ")).toBe(text);
  });
});
