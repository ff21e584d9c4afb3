import { shownUnit } from "./dimensions.ts";
import { fromUnit, inUnit } from "./format.ts";
import type { Shown } from "./limits.ts";

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
