import { asRead, decimalMark } from "./decimalMark.ts";
import type { DimensionName, ShownUnit } from "./dimensions.ts";
import { decimalsOf, shownUnit } from "./showing.ts";

/** Between a figure and its unit, and between thousands: narrow, and no line breaks at it. */
export const THIN_SPACE = "\u202f";
const MINUS = "\u2212";

/**
 * A number with a fixed count of decimals, the reader's decimal mark, thin spaces between thousands and a true minus sign.
 *
 * @param value - any finite number; others give "–"
 * @param decimals - digits after the mark, 0…9
 */
export function formatFixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return "–";
  const text = Math.abs(value).toFixed(decimals);
  const negative = value < 0 && Number(text) !== 0;
  const [whole, fraction] = text.split(".");
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE) : whole;
  return `${negative ? MINUS : ""}${grouped}${fraction ? decimalMark() + fraction : ""}`;
}

/** @returns a number as short as it is, with at most so many decimals: "1.5", where {@link formatFixed} has "1.50" */
export const formatShort = (value: number, decimals: number): string =>
  asRead(String(Number(value.toFixed(decimals))));

/** @returns decimals that show `digits` significant digits of a value of that size, 0…9 */
export function decimalsFor(value: number, digits: number): number {
  if (value === 0 || !Number.isFinite(value)) return 0;
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  return Math.min(9, Math.max(0, digits - 1 - exponent));
}

/** @returns decimals at which an uncertainty shows two digits (JCGM 100:2008, 7.2.6) */
export function decimalsByUncertainty(uncertainty: number): number {
  return decimalsFor(uncertainty, 2);
}

export interface FormatOptions {
  /** label of the unit to show; the one that the book shows otherwise */
  readonly unit?: string;
  /** as fine as so many decimals in the quantity's first unit, in the place of `digits` */
  readonly decimals?: number;
  /** significant digits, default 3 */
  readonly digits?: number;
  /** standard uncertainty in SI: sets the digits in the place of `digits` */
  readonly uncertainty?: number;
}

/** @returns an SI value in a shown unit, without the unit's name */
export function inUnit(si: number, name: DimensionName, label?: string): number {
  const unit = shownUnit(name, label);
  return (si - (unit.offset ?? 0)) / unit.factor;
}

/** @returns the SI value of a number in a shown unit */
export function fromUnit(value: number, name: DimensionName, label?: string): number {
  const unit = shownUnit(name, label);
  return value * unit.factor + (unit.offset ?? 0);
}

/** @returns a number as short as it is, with at most so many significant digits: "0.5", where {@link formatDigits} has "0.500" */
export const formatPlain = (value: number, digits = 12): string =>
  asRead(String(Number(value.toPrecision(digits))));

/** @returns a number to so many significant digits, as the reader writes it, never by powers of ten: "0.0123", "1 230" */
export function formatDigits(value: number, digits: number): string {
  const rounded = Number(value.toPrecision(digits));
  return formatFixed(rounded, decimalsFor(rounded, digits));
}

/**
 * An SI value as text in a shown unit, "0.60 mm".
 *
 * @param si - value in the dimension's SI unit
 * @param name - which quantity
 * @returns number, thin space and unit; "–" where the value is not finite
 */
export function formatQuantity(si: number, name: DimensionName, options: FormatOptions = {}): string {
  const unit = shownUnit(name, options.unit);
  const value = inUnit(si, name, unit.label);
  return withUnit(formatFixed(value, decimalsShown(value, unit, name, options)), unit.label);
}

function decimalsShown(
  value: number,
  { factor }: ShownUnit,
  name: DimensionName,
  { uncertainty, decimals, digits = 3 }: FormatOptions,
): number {
  if (uncertainty && uncertainty > 0) return decimalsByUncertainty(uncertainty / factor);
  return decimals === undefined ? decimalsFor(value, digits) : decimalsOf(name, decimals);
}

/** @returns a figure with what it is in behind it: "38 mm", "31°" */
export function withUnit(figure: string, label: string): string {
  if (label === "1" || label === "") return figure;
  return `${figure}${label === "°" ? "" : THIN_SPACE}${label}`;
}

/**
 * An SI value as a figure in the unit shown, which stands beside it or once for several.
 *
 * @param decimals - in the quantity's first unit: as fine as these
 */
export function figureIn(si: number, name: DimensionName, decimals: number): string {
  return formatFixed(inUnit(si, name), decimalsOf(name, decimals));
}
