import { describe, expect, it } from "vitest";
import type { DimensionName } from "#shared/units/dimensions.ts";
import { parseQuantity, toSI, UnitError } from "#shared/units/parse.ts";

/** Factors: BIPM SI Brochure 9th ed.; NIST SP 811 (2008), Appendix B.8 for psi, inH2O, mmH2O (conventional) and ft³. */
const TYPED: readonly (readonly [string, DimensionName, number])[] = [
  ["12 mmH2O", "pressure", 12 * 9.80665],
  ["12 mm H2O", "pressure", 12 * 9.80665],
  ["12 mmH₂O", "pressure", 12 * 9.80665],
  ["18,1 krpm", "speed", 18100 * (Math.PI / 30)],
  ["0,4 psi", "pressure", 0.4 * 6894.757],
  ["2 inH2O", "pressure", 2 * 249.0889],
  ["38", "length", 0.038],
  ["10 µm", "length", 1e-5],
  ["1.2A", "current", 1.2],
  ["420 g", "load", 0.42 * 9.80665],
  ["4 N", "load", 4],
  ["24 000 rpm", "speed", 24000 * (Math.PI / 30)],
  ["400 Hz", "speed", 400 * 2 * Math.PI],
  ["7800", "kv", 7800],
  ["0.2 mN m", "torque", 2e-4],
  ["18 °C", "temperature", 291.15],
  ["18 C", "temperature", 291.15],
  ["64 F", "temperature", 290.9278],
  ["60 %", "fraction", 0.6],
  ["34°", "angle", 34 * (Math.PI / 180)],
  ["650 mAh", "charge", 2340],
  ["5 cfm", "flow", 5 * 4.719474e-4],
  ["10 L/min", "flow", 10 / 60000],
  ["5 m3/h", "flow", 5 / 3600],
  ["50 cm2", "area", 5e-3],
  ["5 mΩ", "resistance", 5e-3],
];

describe("a typed quantity, in the spellings of the bench", () => {
  it.each(TYPED)("%s as %s reads as the handbook's SI value", (text, name, expected) => {
    expect(toSI(parseQuantity(text, name), name)).toBeCloseToRelative(expected, 3e-7);
  });

  it("keeps the number and the unit as they were typed", () => {
    expect(parseQuantity("12 mmH2O", "pressure")).toEqual({ value: 12, unit: "mmH2O" });
    expect(parseQuantity("0,4 psi", "pressure")).toEqual({ value: 0.4, unit: "psi" });
  });

  it("reads a fraction whose unit is the digit 1, and only a fraction", () => {
    expect(parseQuantity("0.7 1", "fraction")).toEqual({ value: 0.7, unit: "1" });
    expect(() => parseQuantity("0.7 1", "pressure")).toThrow(/Two numbers/);
  });
});

describe("a typed quantity, when it is none", () => {
  it.each([
    ["", "length"],
    ["abc", "pressure"],
    ["1,200 Pa", "pressure"],
    ["5 kg", "pressure"],
    ["5 foo", "pressure"],
    ["12 mm", "pressure"],
    ["5; rm", "length"],
    ["1e999 mm", "length"],
  ] as const)("%j as %s is refused with what was read, what is allowed and an example", (text, name) => {
    try {
      parseQuantity(text, name);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(UnitError);
      expect((error as UnitError).read).toBe(text);
      expect((error as UnitError).message).toMatch(/allowed: .* for example "/);
    }
  });
});

describe("the message of a quantity that can't be read", () => {
  const messageOf = (text: string, name: DimensionName): string => {
    try {
      parseQuantity(text, name);
    } catch (error) {
      if (error instanceof UnitError) return error.message;
      throw error;
    }
    return "";
  };

  it("with the unit of another quantity: names the quantity in words", () => {
    expect(messageOf("12 kg", "thermalResistance")).toMatch(/no unit of thermal resistance\./);
    expect(messageOf("12 kg", "kv")).toMatch(/no unit of a speed constant\./);
  });

  it("with ten thousand characters: quotes the first sixty", () => {
    expect(messageOf("x".repeat(10_000), "length").length).toBeLessThan(250);
    expect(messageOf(`3 ${"x".repeat(10_000)}`, "length").length).toBeLessThan(350);
  });
});
