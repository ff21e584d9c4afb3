import { shownUnit } from "../../../shared/units/dimensions.ts";
import { formatFixed, formatQuantity, fromUnit, inUnit } from "../../../shared/units/format.ts";
import { parseNumber } from "../../../shared/units/number.ts";
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
  return handle.decimals > 0 && Number(finer) !== Number(text) ? finer : text;
}

/** @returns the value with its unit, as a sentence shows it */
export function withUnit(handle: Handle, si: number): string {
  const text = formatFixed(shownNumber(handle, si), handle.decimals);
  const unit = unitOf(handle);
  return unit === "" ? text : `${text}\u2009${unit}`;
}

function range(handle: Handle): string {
  const [low, high] = handle.limits;
  if (!handle.dimension) return `${low} to ${high}`;
  const say = (si: number) => formatQuantity(si, handle.dimension ?? "fraction", { unit: handle.unit });
  return `${say(low)} to ${say(high)}`;
}

/**
 * Reads what was typed into a handle.
 *
 * @param handle - whose field it is
 * @param text - a number in the shown unit, the unit itself may follow it
 * @returns the SI value, or a message that names what was read, what is allowed and an example
 */
export function readEntry(handle: Handle, text: string, example: number): Entry {
  const unit = unitOf(handle);
  const trimmed = text.trim();
  const bare = unit !== "" && trimmed.endsWith(unit) ? trimmed.slice(0, -unit.length) : trimmed;
  const number = parseNumber(bare);
  const hint = `allowed: ${range(handle)}, for example “${withUnit(handle, example)}”.`;
  if (number === null)
    return {
      problem:
        trimmed === "" ? `Nothing was typed; ${hint}` : `Read “${trimmed}”, which is no number here; ${hint}`,
    };
  const value = siOf(handle, number);
  const [low, high] = handle.limits;
  const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
  if (!(value >= low - slack && value <= high + slack)) return { problem: `Read “${trimmed}”; ${hint}` };
  if (handle.key === "series" && !Number.isInteger(number))
    return { problem: `Read “${trimmed}”; a whole number of cells is needed, for example “${example}”.` };
  return { value: Math.min(high, Math.max(low, value)) };
}
