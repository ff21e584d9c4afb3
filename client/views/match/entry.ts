import { formatFixed } from "../../../shared/units/format.ts";
import { limitsInWords } from "../../../shared/units/limits.ts";
import { decimalsShown, shownNumber, unitShown } from "../../../shared/units/shown.ts";
import type { Handle } from "../../state/handles.ts";

/** @returns the number as a field shows it: the handle's digits, one more where the value has it; in another unit than the first there are enough */
export function entryText(handle: Handle, si: number): string {
  const shown = shownNumber(handle, si);
  const decimals = decimalsShown(handle, handle.decimals);
  const text = shown.toFixed(decimals);
  if (decimals !== handle.decimals) return text;
  const finer = shown.toFixed(decimals + 1);
  return Number(finer) !== Number(text) ? finer : text;
}

/** @returns the value with its unit, as a sentence shows it */
export function withUnit(handle: Handle, si: number): string {
  const text = formatFixed(shownNumber(handle, si), decimalsShown(handle, handle.decimals));
  const unit = unitShown(handle);
  return unit === "" ? text : `${text}\u202f${unit}`;
}

/** @returns what can be typed, "0 mm to 100 mm" */
export function range(handle: Handle): string {
  return limitsInWords(handle.limits, handle);
}

/**
 * What holds a slider where it is, in words.
 *
 * @param was - where the build stands [SI]
 * @param value - where the slider stands [SI]
 * @returns "the slider ends here; 2 mm to 2000 mm can be typed", or null between its ends
 */
export function endWords(handle: Handle, was: number, value: number): string | null {
  const halfStep = 0.5 * 10 ** -decimalsShown(handle, handle.decimals);
  const near = (end: number) => Math.abs(shownNumber(handle, end) - shownNumber(handle, value)) <= halfStep;
  const { min: low, max: high } = handle.limits;
  if (near(low)) return `no less than ${withUnit(handle, low)} can be set`;
  if (near(high)) return `no more than ${withUnit(handle, high)} can be set`;
  return handle.slide(was).some(near) ? `the slider ends here; ${range(handle)} can be typed` : null;
}
