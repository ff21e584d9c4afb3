import { describe, expect, it } from "vitest";
import { toSI } from "#shared/units/quantity.ts";

/** Factors: NIST SP 811 (2008), Appendix B.8; the ounce is 28.349 523 125 g exactly. */
describe("a quantity in a unit of the table", () => {
  it.each([
    [{ value: 2, unit: "oz" }, "load", 2 * 0.028349523125 * 9.80665],
    [{ value: 0.002, unit: "MPa" }, "pressure", 2000],
    [{ value: 30, unit: "kPa" }, "stress", 30_000],
    [{ value: 18, unit: " C " }, "temperature", 291.15],
    [{ value: 0.6, unit: "" }, "fraction", 0.6],
  ] as const)("%o is read as %s", (typed, name, si) => {
    expect(toSI(typed, name)).toBeCloseToRelative(si, 1e-12);
  });
});

describe("a quantity in a unit beyond the table", () => {
  it.each([
    [{ value: 300, unit: "cm^3/s" }, "flow", 3e-4],
    [{ value: 3, unit: "gf/mm²" }, "stress", 3e3 * 9.80665],
    [{ value: 2, unit: "kg m/s^2" }, "load", 2],
    [{ value: 1, unit: "rad/(s V)" }, "kv", 30 / Math.PI],
    [{ value: 0.07, unit: "lb/ft³" }, "density", (0.07 * 0.45359237) / 0.3048 ** 3],
  ] as const)("%o is read as %s by its symbols", (typed, name, si) => {
    expect(toSI(typed, name)).toBeCloseToRelative(si, 1e-12);
  });

  it.each(["m()", "m*", "/", "(m", "m)", "m//s", "m^9", "mm2 5"])("%j is no unit of length", (unit) => {
    expect(() => toSI({ value: 1, unit }, "length")).toThrow(/no unit of length/);
  });
});
