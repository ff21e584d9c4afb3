import { asRead } from "./decimalMark.ts";
import { type DimensionName, dimension, type ShownUnit } from "./dimensions.ts";
import { fromUnit, inUnit } from "./format.ts";
import type { Shown } from "./limits.ts";
import { decimalsOf, shownUnit } from "./showing.ts";

/** Digits that a number taken back from SI is shown with. */
const DIGITS = 10;

/** @returns an SI value as the number that a field shows, in the unit meant there */
export function shownNumber({ dimension, unit }: Shown, si: number): number {
  return dimension ? inUnit(si, dimension, unit) : si;
}

/** @returns the SI value of the number that a field shows */
export function siOfShown({ dimension, unit }: Shown, shown: number): number {
  return dimension ? fromUnit(shown, dimension, unit) : shown;
}

/** @returns label of the unit meant where none is typed; what follows a bare number */
export function unitShown({ dimension, unit, suffix = "" }: Shown): string {
  return dimension ? shownUnit(dimension, unit).label : suffix;
}

/** @returns what a field is called, with the unit meant there: "Gap, mm" */
export function labelWithUnit(label: string, shown: Shown): string {
  const unit = unitShown(shown);
  return unit === "" ? label : `${label}, ${unit}`;
}

/** @returns an SI value as it would be typed in the unit meant, without that unit */
export function numberText(shown: Shown, si: number): string {
  return String(Number(shownNumber(shown, si).toPrecision(DIGITS)));
}

/** A number of more digits was not typed in that unit. */
const TYPED_DIGITS = 6;
/** Digits in which a stored SI value comes back as it was typed. */
const ALL_DIGITS = 12;

const rounded = (value: number, digits: number) => Number(value.toPrecision(digits));

/** The unit that the book shows; the quantity's first where the value was plainly typed in that one. */
function typedUnit(si: number, name: DimensionName): ShownUnit {
  const [first] = dimension(name).shown;
  const isShort = ({ label }: ShownUnit) => {
    const value = inUnit(si, name, label);
    return rounded(value, TYPED_DIGITS) === rounded(value, ALL_DIGITS);
  };
  const shown = shownUnit(name);
  return !isShort(shown) && isShort(first) ? first : shown;
}

/**
 * An SI value as a person would type it, with its unit, the decimals behind a point: for addresses.
 *
 * @param digits - at most so many significant ones, in the unit that the book shows; unless given, as many as give back
 *   what was typed, in the unit that it seems to have been typed in
 */
export function pointText(si: number, name: DimensionName, digits?: number): string {
  const { label } = digits === undefined ? typedUnit(si, name) : shownUnit(name);
  const value = rounded(inUnit(si, name, label), digits ?? ALL_DIGITS);
  return `${value}${label === "1" ? "" : ` ${label}`}`;
}

/** @returns the same with the reader's own decimal mark: for fields and sentences */
export const typedText = (si: number, name: DimensionName, digits?: number): string =>
  asRead(pointText(si, name, digits));

/** @returns decimals in the unit shown that are as fine as so many in the quantity's first unit; as many of a bare number */
export function decimalsShown({ dimension, unit }: Shown, decimals: number): number {
  return dimension && unit === undefined ? decimalsOf(dimension, decimals) : decimals;
}
