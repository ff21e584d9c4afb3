import type { Working, WorkingValue } from "../../../shared/physics/working.ts";
import { asRead } from "../../../shared/units/decimalMark.ts";
import type { DimensionName } from "../../../shared/units/dimensions.ts";
import { inUnit } from "../../../shared/units/format.ts";
import { unitOf } from "../../../shared/units/showing.ts";

const DIGITS = 5;

/** What a number of a working is of, by its SI unit; another stays in it, unless the working says what it is of. */
const QUANTITIES: Readonly<Record<string, DimensionName>> = {
  m: "length",
  "m²": "area",
  "m³/s": "flow",
  kg: "mass",
  N: "load",
  K: "temperature",
  "rad/s": "speed",
  N·m: "torque",
};
/** Shown in a unit that an equation can't be checked with: their SI value stands behind it. */
const BESIDE_SI: ReadonlySet<DimensionName> = new Set(["load", "temperature"]);

type Said = Pick<WorkingValue, "value" | "unit" | "quantity">;

/** A leak's coefficient is said with litres, as flows are, in metric and inch books alike: its exponent is none of a unit. */
const LITRES_PER_M3 = 1000;
const COEFFICIENT = "m³/(s·Pa^x)";

const [SMALL, LARGE] = [1e-3, 1e6];

/** Five digits, and powers of ten only where they are shorter. */
function withDigits(value: number, unit: string): string {
  const size = Math.abs(value);
  const plain = size === 0 || (size >= SMALL && size < LARGE);
  const text = asRead(plain ? String(Number(value.toPrecision(DIGITS))) : value.toExponential(DIGITS - 1));
  return unit === "" ? text : `${text}\u202f${unit}`;
}

/** A number of a working in the unit that the book shows. */
export function shownInWorking({ value, unit, quantity = QUANTITIES[unit] }: Said): string {
  if (unit === COEFFICIENT) return withDigits(value * LITRES_PER_M3, "L/(s·Pa^x)");
  if (quantity === undefined) return withDigits(value, unit);
  const label = unitOf(quantity);
  const shown = withDigits(inUnit(value, quantity), label);
  return BESIDE_SI.has(quantity) && label !== unit ? `${shown} (${withDigits(value, unit)})` : shown;
}

/** @returns the result of a working, of a range both ends */
export function resultText({ result, upTo }: Pick<Working, "result" | "upTo">): string {
  const low = shownInWorking(result);
  return upTo === undefined ? low : `${low} to ${shownInWorking({ ...result, value: upTo })}`;
}
