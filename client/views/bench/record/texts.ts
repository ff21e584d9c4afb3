import { type DimensionName, dimension } from "../../../../shared/units/dimensions.ts";
import { parseNumber } from "../../../../shared/units/number.ts";
import { parseQuantity, type TypedQuantity, UnitError } from "../../../../shared/units/parse.ts";

/** What one field's text says: its value, or what is wrong with it. */
export type Reading<T> = { readonly value: T } | { readonly message: string };

export const isGood = <T>(reading: Reading<T>): reading is { readonly value: T } => "value" in reading;

/** So much of what was read stands in a message [characters]. */
const QUOTED = 60;
const TYPED_SPACES = /[\u2009\u202f\u00a0]/g;

/** Reads a quantity; the message names what was read, what is allowed and an example. */
export function readQuantity(text: string, name: DimensionName, unit?: string): Reading<TypedQuantity> {
  try {
    return { value: parseQuantity(text, name, unit) };
  } catch (error) {
    if (error instanceof UnitError) return { message: error.message };
    throw error;
  }
}

/** Reads a bare number between two limits. */
export function readNumber(text: string, min: number, max: number, example: string): Reading<number> {
  const value = parseNumber(text);
  if (value !== null && value >= min && value <= max) return { value };
  return {
    message: `Read "${text.trim().slice(0, QUOTED)}"; allowed: a number from ${min} to ${max}, for example "${example}".`,
  };
}

/** Reads a count. */
export function readCount(text: string, min: number, max: number): Reading<number> {
  const value = parseNumber(text);
  if (value !== null && Number.isInteger(value) && value >= min && value <= max) return { value };
  return {
    message: `Read "${text.trim().slice(0, QUOTED)}"; allowed: a whole number from ${min} to ${max}, for example "2".`,
  };
}

/** @returns a stored quantity as text that reads back as the same number and unit */
export function quantityText({ value, unit }: TypedQuantity): string {
  return `${value} ${unit}`.trim();
}

/** @returns the message for a quantity that is missing */
export function needed(label: string, name: DimensionName): string {
  return `${label} is needed, for example "${dimension(name).example}".`;
}

function carriesUnit(text: string, unit: string): boolean {
  if (!text.endsWith(unit)) return false;
  return !/^\d/.test(unit) || /\s\d+$/.test(text);
}

/**
 * What a cell says once it is left: the unit meant is written out, so that a later change elsewhere can't change it.
 *
 * @param text - as typed
 * @param name - which quantity
 * @param unit - the unit meant where none is typed
 * @returns the text with its unit, and the unit; null where the text can't be read
 */
export function settled(
  text: string,
  name: DimensionName,
  unit?: string,
): { readonly text: string; readonly unit: string } | null {
  const typed = text.replace(TYPED_SPACES, " ").trim();
  const reading = readQuantity(typed, name, unit);
  if (!isGood(reading)) return null;
  const meant = reading.value.unit;
  return { text: carriesUnit(typed, meant) ? typed : `${typed} ${meant}`, unit: meant };
}

/** @returns the units to choose from, the present one among them even where it is none of the usual */
export function unitLabels(name: DimensionName, present: string): string[] {
  const labels = dimension(name).shown.map((unit) => unit.label);
  return labels.includes(present) ? labels : [present, ...labels];
}
