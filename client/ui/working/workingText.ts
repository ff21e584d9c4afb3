import type { Working } from "../../../shared/physics/working.ts";
import { asRead } from "../../../shared/units/decimalMark.ts";
import type { DimensionName } from "../../../shared/units/dimensions.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { unitOf } from "../../../shared/units/showing.ts";

const DIGITS = 5;

/** What a number of a working is of, by its SI unit; any other stays in it: a pascal may be suction, air or stress. */
const QUANTITIES: Readonly<Record<string, DimensionName>> = {
  m: "length",
  "m²": "area",
  "m³/s": "flow",
  kg: "mass",
  "rad/s": "speed",
  N·m: "torque",
};

/** A leak's coefficient is said with litres, as flows are, in metric and inch books alike: its exponent is none of a unit. */
const LITRES_PER_M3 = 1000;
const COEFFICIENT = "m³/(s·Pa^x)";

function onScreen(si: number, siUnit: string): readonly [value: number, unit: string] {
  const name = QUANTITIES[siUnit];
  if (name !== undefined) return [inUnit(si, name), unitOf(name)];
  if (siUnit === COEFFICIENT) return [si * LITRES_PER_M3, "L/(s·Pa^x)"];
  return [si, siUnit];
}
const [SMALL, LARGE] = [1e-3, 1e6];

/** Five digits in the screen's unit, and powers of ten only where they are shorter. */
export function shownInWorking(si: number, siUnit: string): string {
  const [value, unit] = onScreen(si, siUnit);
  const size = Math.abs(value);
  const plain = size === 0 || (size >= SMALL && size < LARGE);
  const text = asRead(plain ? String(Number(value.toPrecision(DIGITS))) : value.toExponential(DIGITS - 1));
  return unit === "" ? text : `${text}\u202f${unit}`;
}

/** @returns the result of a working, of a range both ends */
export function resultText({ result: { value, unit }, upTo }: Pick<Working, "result" | "upTo">): string {
  const low = shownInWorking(value, unit);
  return upTo === undefined ? low : `${low} to ${shownInWorking(upTo, unit)}`;
}
