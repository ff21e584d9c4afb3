import { isGood, type NumberSpec, readNumber } from "./readNumber.ts";
import { unitOf } from "./showing.ts";

function carriesUnit(text: string, unit: string): boolean {
  if (unit === "" || !text.endsWith(unit)) return unit === "";
  return !/^\d/.test(unit) || /\s\d+$/.test(text);
}

/**
 * What a field says once it is left: the unit meant is written out, so that a later change elsewhere can't change it.
 *
 * @param text - as typed
 * @returns the text with its unit; as it is where it can't be read, or is of more units than one
 */
export function settledText(spec: NumberSpec, text: string): string {
  const trimmed = text.trim();
  if (spec.dimension === null || trimmed === "") return text;
  const reading = readNumber({ ...spec, limits: undefined }, trimmed);
  if (!isGood(reading)) return text;
  const { unit } = reading.typed;
  const isMeant = unit === (spec.unit ?? unitOf(spec.dimension));
  return isMeant && !carriesUnit(trimmed, unit) ? `${trimmed} ${unit}` : trimmed;
}
