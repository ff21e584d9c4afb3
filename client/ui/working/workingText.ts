import type { Working } from "../../../shared/physics/working.ts";
import { asRead } from "../../../shared/units/decimalMark.ts";

const DIGITS = 5;
const RPM = 30 / Math.PI;

/** The units in which the screen shows a quantity, by its SI unit: [unit, how many of it the SI unit has]. */
const SCREEN_UNITS: Readonly<Record<string, readonly [unit: string, count: number]>> = {
  m: ["mm", 1e3],
  "m²": ["cm²", 1e4],
  "m³/s": ["L/s", 1e3],
  "m³/(s·Pa^x)": ["L/(s·Pa^x)", 1e3],
  kg: ["g", 1e3],
  "rad/s": ["rpm", RPM],
  N·m: ["mN·m", 1e3],
};
const [SMALL, LARGE] = [1e-3, 1e6];

/** Five digits in the screen's unit, and powers of ten only where they are shorter. */
export function shownInWorking(si: number, siUnit: string): string {
  const [unit, count] = SCREEN_UNITS[siUnit] ?? [siUnit, 1];
  const value = si * count;
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
