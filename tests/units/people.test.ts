import { describe, expect, it } from "vitest";
import type { DimensionName } from "#shared/units/dimensions.ts";
import { parseQuantity, toSI, UnitError } from "#shared/units/parse.ts";

const G = 9.80665;
const RPM = Math.PI / 30;
const POUND = 0.45359237;

/** What people type, and the SI value by hand: pound 0.453 592 37 kg and inch 25.4 mm exact (NIST SP 811, B.8). */
const TYPED: readonly (readonly [text: string, name: DimensionName, si: number])[] = [
  ["12 gr", "mass", 0.012],
  ["1 lb 3 oz", "mass", (19 / 16) * POUND],
  ["1 lb 3 oz", "load", (19 / 16) * POUND * G],
  ["2 lbs.", "mass", 2 * POUND],
  ["1,2 kilos", "mass", 1.2],
  ["4 lbf", "load", 4 * POUND * G],
  ["2 kgf", "load", 2 * G],
  ["500 gf", "load", 0.5 * G],
  ["3/4 in", "length", 0.01905],
  ['3/4"', "length", 0.01905],
  ["1 1/2 in", "length", 0.0381],
  ["1-1/2 in", "length", 0.0381],
  ["½ in", "length", 0.0127],
  ["1½ in", "length", 0.0381],
  ["1 ½″", "length", 0.0381],
  ["5' 3\"", "length", 63 * 0.0254],
  ["20 thou", "length", 5.08e-4],
  ["2 inches", "length", 0.0508],
  ["110 MM", "length", 0.11],
  ["28k", "speed", 28000 * RPM],
  ["28 k", "speed", 28000 * RPM],
  ["28k rpm", "speed", 28000 * RPM],
  ["28krpm", "speed", 28000 * RPM],
  ["24000 RPM", "speed", 24000 * RPM],
  ["24 000 U/min", "speed", 24000 * RPM],
  ["24000 min⁻¹", "speed", 24000 * RPM],
  ["24000/min", "speed", 24000 * RPM],
  ["24\u202f000 rpm", "speed", 24000 * RPM],
  ["24'000 rpm", "speed", 24000 * RPM],
  ["0,4 kHz", "speed", 800 * Math.PI],
  ["5 CFM", "flow", (5 * 0.3048 ** 3) / 60],
  ["5 m3/h", "flow", 5 / 3600],
  ["90 l/min", "flow", 1.5e-3],
  ["12 MMH2O", "pressure", 12 * G],
  ["12 mm WS", "pressure", 12 * G],
  ['2"H2O', "pressure", 2 * 25.4 * G],
  ["9 hpa", "pressure", 900],
  ["1,200.5 Pa", "pressure", 1200.5],
  ["1.200,5 Pa", "pressure", 1200.5],
  ["342 ma", "current", 0.342],
  ["650 MAH", "charge", 2340],
  ["1,3 ah", "charge", 4680],
  ["5 mOhm", "resistance", 5e-3],
  ["5 mohm", "resistance", 5e-3],
  ["5 MΩ", "resistance", 5e6],
  ["7800 KV", "kv", 7800],
  ["0.2 mNm", "torque", 2e-4],
  ["3 g·cm", "torque", 3e-5 * G],
  ["1 oz-in", "torque", (POUND / 16) * G * 0.0254],
  ["20 mN·m/krpm", "viscousTorque", 0.02 / (1000 * RPM)],
  ["22 °C/W", "thermalResistance", 22],
  ["18 c", "temperature", 291.15],
  ["64 °f", "temperature", (64 + 459.67) / 1.8],
  ["−3 °C", "temperature", 270.15],
  ["300 k", "temperature", 300],
  ["1/2", "fraction", 0.5],
  ["80 percent", "fraction", 0.8],
  ["1 h 20 min", "time", 4800],
  ["153º", "angle", 153 * (Math.PI / 180)],
];

describe("a quantity as people write it", () => {
  it.each(TYPED)("%s as %s reads as the value by hand", (text, name, si) => {
    expect(toSI(parseQuantity(text, name), name)).toBeCloseToRelative(si, 1e-12);
  });

  it("in two units: is kept in the smaller, exactly", () => {
    expect(parseQuantity("1 lb 3 oz", "mass")).toEqual({ value: 19, unit: "oz" });
    expect(parseQuantity("5' 3\"", "length")).toEqual({ value: 63, unit: '"' });
  });
});

describe("a text that can be read in two ways or holds two numbers", () => {
  it.each([
    ["110×90 mm", "length"],
    ["110 × 90 mm", "length"],
    ["110x90 mm", "length"],
    ["2·200 mm", "length"],
    ["2*200 mm", "length"],
    ["110×90 mm²", "area"],
    ["110 90 mm", "length"],
    ["3 mm 5 mm", "length"],
    ["1 lb 20 oz", "mass"],
    ["1 lb 3", "mass"],
    ["1.5 lb 3 oz", "mass"],
    ["1 lb -3 oz", "mass"],
    ["1 °C 2 °C", "temperature"],
  ] as const)("%s as %s is refused, two numbers stand in it", (text, name) => {
    expect(() => parseQuantity(text, name)).toThrow(UnitError);
    expect(() => parseQuantity(text, name)).toThrow(/^Two numbers stand in it; one is asked for\./);
  });

  it.each([
    ["110/90 mm", "length"],
    ["3/0 in", "length"],
    ["1,200 Pa", "pressure"],
    ["1.2.3 V", "voltage"],
  ] as const)("%s as %s is refused, it can be read in two ways or in none", (text, name) => {
    expect(() => parseQuantity(text, name)).toThrow(/^The number can be read in two ways or in none\./);
  });

  it.each(["×90 mm", "90 mm", "·200 mm", "x90 mm", "* mm", "½ mm"])(
    "a stored unit %j is refused as well, it begins with a number or a sign of multiplication",
    (unit) => {
      expect(() => toSI({ value: 110, unit }, "length")).toThrow(/^Two numbers stand in it/);
    },
  );
});

describe("milli and mega, which only their case tells apart", () => {
  it.each([
    ["5 mW", "power", 5e-3],
    ["5 MW", "power", 5e6],
    ["5 mpa", "pressure", 5e-3],
    ["5 MPA", "pressure", 5e6],
    ["5 mohm", "resistance", 5e-3],
    ["5 Mohm", "resistance", 5e6],
  ] as const)("%s as %s stays what its first letter says", (text, name, si) => {
    expect(toSI(parseQuantity(text, name), name)).toBeCloseToRelative(si, 1e-12);
  });
});
