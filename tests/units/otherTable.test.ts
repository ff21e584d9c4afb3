import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import type { DimensionName } from "#shared/units/dimensions.ts";
import { toSI } from "#shared/units/quantity.ts";

/** What both tables know: the quantity, as typed here, and what mathjs calls the same unit and its SI unit; not what it keeps rounded (psi, torr, hp). */
const SAME: readonly (readonly [DimensionName, typed: string, other: string, si: string])[] = [
  ["length", "mm", "mm", "m"],
  ["length", "in", "inch", "m"],
  ["length", "ft", "foot", "m"],
  ["length", "yd", "yard", "m"],
  ["length", "thou", "mil", "m"],
  ["area", "cm²", "cm^2", "m^2"],
  ["area", "in²", "inch^2", "m^2"],
  ["mass", "oz", "ounce", "kg"],
  ["mass", "lb", "poundmass", "kg"],
  ["mass", "t", "tonne", "kg"],
  ["load", "lbf", "lbf", "N"],
  ["load", "kgf", "kgf", "N"],
  ["pressure", "kPa", "kPa", "Pa"],
  ["pressure", "mbar", "mbar", "Pa"],
  ["flow", "L/min", "L/minute", "m^3/s"],
  ["flow", "m³/h", "m^3/hour", "m^3/s"],
  ["flow", "cfm", "foot^3/minute", "m^3/s"],
  ["voltage", "mV", "mV", "V"],
  ["current", "mA", "mA", "A"],
  ["charge", "mAh", "mA hour", "C"],
  ["resistance", "mΩ", "mohm", "ohm"],
  ["torque", "mN·m", "mN m", "N m"],
  ["temperature", "°F", "degF", "K"],
  ["temperature", "°C", "degC", "K"],
];

describe("the table of units against that of mathjs", () => {
  it.each(SAME)("%s in %s is %s in %s", (quantity, typed, other, si) => {
    expect(toSI({ value: 12.5, unit: typed }, quantity)).toBeCloseToRelative(
      unit(12.5, other).toNumber(si),
      1e-12,
    );
  });
});
