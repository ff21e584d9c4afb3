import { shownUnit } from "../../../shared/units/dimensions.ts";
import { formatFixed, formatQuantity, fromUnit, inUnit } from "../../../shared/units/format.ts";
import { parseNumber } from "../../../shared/units/number.ts";
import type { parseQuantity } from "../../../shared/units/parse.ts";
import { toSI, UnitError } from "../../../shared/units/quantity.ts";
import type { Handle } from "../../state/handles.ts";

export type Entry = { readonly value: number } | { readonly problem: string };

/** @returns the number of a handle in its shown unit */
export function shownNumber(handle: Handle, si: number): number {
  return handle.dimension ? inUnit(si, handle.dimension, handle.unit) : si;
}

/** @returns the SI value of a number in a handle's shown unit */
export function siOf(handle: Handle, shown: number): number {
  return handle.dimension ? fromUnit(shown, handle.dimension, handle.unit) : shown;
}

/** @returns label of the unit, "" for a bare number */
export function unitOf(handle: Handle): string {
  return handle.dimension ? shownUnit(handle.dimension, handle.unit).label : "";
}

/** @returns the number as a field shows it: the handle's digits, one more where the value has it */
export function entryText(handle: Handle, si: number): string {
  const shown = shownNumber(handle, si);
  const text = shown.toFixed(handle.decimals);
  const finer = shown.toFixed(handle.decimals + 1);
  return Number(finer) !== Number(text) ? finer : text;
}

/** @returns the value with its unit, as a sentence shows it */
export function withUnit(handle: Handle, si: number): string {
  const text = formatFixed(shownNumber(handle, si), handle.decimals);
  const unit = unitOf(handle);
  return unit === "" ? text : `${text}\u2009${unit}`;
}

/** @returns what can be typed, "0 mm to 100 mm" */
export function range(handle: Handle): string {
  const [low, high] = handle.limits;
  if (!handle.dimension) return `${low} to ${high}`;
  const say = (si: number) => formatQuantity(si, handle.dimension ?? "fraction", { unit: handle.unit });
  return `${say(low)} to ${say(high)}`;
}

/** A number that stands alone is in the setting's own unit; one with a unit is in that. */
function readShown(handle: Handle, text: string, parse: typeof parseQuantity): number | UnitError | null {
  if (!handle.dimension) return parseNumber(text);
  try {
    return toSI(parse(text, handle.dimension, unitOf(handle)), handle.dimension);
  } catch (error) {
    if (!(error instanceof UnitError)) throw error;
    return /\p{L}/u.test(text) ? error : null;
  }
}

/**
 * Reads what was typed into a setting.
 *
 * @param handle - whose field it is
 * @param text - a number in the shown unit, or with a unit of its own: "2 in"
 * @param parse - reads a quantity; handed in, since its unit tables load only when a field is used
 * @returns the SI value, or a message that names what was read, what is allowed and an example
 */
export function readEntry(handle: Handle, text: string, example: number, parse: typeof parseQuantity): Entry {
  const trimmed = text.trim();
  const hint = `allowed: ${range(handle)}, for example “${withUnit(handle, example)}”.`;
  if (trimmed === "") return { problem: `Nothing was typed; ${hint}` };
  const value = readShown(handle, trimmed, parse);
  if (value instanceof UnitError) return { problem: value.message };
  if (value === null) return { problem: `Read “${trimmed}”, which is no number here; ${hint}` };
  const [low, high] = handle.limits;
  const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
  if (!(value >= low - slack && value <= high + slack)) return { problem: `Read “${trimmed}”; ${hint}` };
  if (handle.key === "series" && !Number.isInteger(value))
    return { problem: `Read “${trimmed}”; a whole number of cells is needed, for example “${example}”.` };
  return { value: Math.min(high, Math.max(low, value)) };
}

/**
 * What holds a slider where it is, in words.
 *
 * @param was - where the build stands [SI]
 * @param value - where the slider stands [SI]
 * @returns "the slider ends here; 2 mm to 2000 mm can be typed", or null between its ends
 */
export function endWords(handle: Handle, was: number, value: number): string | null {
  const halfStep = 0.5 * 10 ** -handle.decimals;
  const near = (end: number) => Math.abs(shownNumber(handle, end) - shownNumber(handle, value)) <= halfStep;
  const [low, high] = handle.limits;
  if (near(low)) return `no less than ${withUnit(handle, low)} can be set`;
  if (near(high)) return `no more than ${withUnit(handle, high)} can be set`;
  return handle.slide(was).some(near) ? `the slider ends here; ${range(handle)} can be typed` : null;
}
