import { afterEach, describe, expect, it } from "vitest";
import { resultText, shownInWorking } from "#client/ui/working/workingText.ts";
import type { DimensionName } from "#shared/units/dimensions.ts";
import { showUnitsOf, UNIT_SETS } from "#shared/units/showing.ts";

const said = (value: number, unit: string, quantity?: DimensionName) =>
  shownInWorking({ value, unit, quantity }).replaceAll("\u202f", " ");

afterEach(() => showUnitsOf(() => UNIT_SETS.metric));

describe("a number of a working, by its SI unit", () => {
  // 1 rad/s = 30/π rpm; 1 m² = 10⁴ cm²; 1 gf = 9.80665 mN; 0 °C = 273.15 K: by definition.
  it.each([
    [0.0006, "m", "0.6 mm"],
    [0.004, "m²", "40 cm²"],
    [0.00162, "m³/s", "1.62 L/s"],
    [0.18, "kg", "180 g"],
    [2513.274, "rad/s", "24000 rpm"],
    [2e-4, "N·m", "0.2 mN·m"],
    [9.80665, "N", "1000 g (9.8066 N)"],
    [293.15, "K", "20 °C (293.15 K)"],
    [2.3e-5, "m³/(s·Pa^x)", "0.023 L/(s·Pa^x)"],
    [640.25, "Pa", "640.25 Pa"],
    [1.81e-5, "Pa·s", "1.8100e-5 Pa·s"],
    [0, "m", "0 mm"],
    [0.612345, "", "0.61235"],
  ])("%s %s stands as %s, in the screen's unit", (value, unit, text) => {
    expect(said(value, unit)).toBe(text);
  });

  // 1 in = 25.4 mm, 1 inH2O = 249.08891 Pa (NIST SP 811, conventional), 1 oz = 28.349523125 g, 1 inHg = 3386.389 Pa (SP 811), 1 psi = 6894.757 Pa.
  it.each([
    [0.0254, "m", undefined, "1 in"],
    [249.08891, "Pa", "pressure", "1 inH2O"],
    [3386.389, "Pa", "airPressure", "1 inHg"],
    [6894.757, "Pa", "stress", "1 psi"],
    [0.028349523125, "kg", undefined, "1 oz"],
    [0.028349523125 * 9.80665, "N", undefined, "1 oz (0.27801 N)"],
    [273.15, "K", undefined, "32 °F (273.15 K)"],
    [1.81e-5, "Pa·s", undefined, "1.8100e-5 Pa·s"],
  ] as const)("%s %s (%s) stands as %s in a book in inches", (value, unit, quantity, text) => {
    showUnitsOf(() => UNIT_SETS.inch);
    expect(said(value, unit, quantity)).toBe(text);
  });
});

describe("the result of a working that is a range", () => {
  it("has both ends in the unit shown", () => {
    showUnitsOf(() => UNIT_SETS.inch);
    const result = {
      symbol: "Δp",
      meaning: "suction",
      value: 249.08891,
      unit: "Pa",
      quantity: "pressure" as const,
    };
    expect(resultText({ result, upTo: 2 * 249.08891 }).replaceAll("\u202f", " ")).toBe("1 inH2O to 2 inH2O");
  });
});
