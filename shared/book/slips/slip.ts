import { type DimensionName, dimension } from "../../units/dimensions.ts";
import { formatFixed, formatQuantity, inUnit } from "../../units/format.ts";
import type { TypedQuantity } from "../../units/quantity.ts";

/** A number that may be a slip of the unit or of a digit: allowed, and far from what is expected. */
export interface Slip {
  /** of the field, "rows.3.held" */
  readonly path: string;
  /** what was expected, and the question: "986 g was predicted. Is the unit right?" */
  readonly why: string;
}

/** What a number is expected to be; null at an end that nothing is known of. */
export interface Expected {
  readonly path: string;
  /** [SI] */
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  /** times that it may lie outside before it is asked about [-] */
  readonly slack: number;
  readonly said: string;
}

/** A unit or a digit wrong is ten times off or more; what is expected may itself be half or twice what is true. Judgement. */
export const OFF = 5;

export const UNIT = "Is the unit right?";

/** @returns the number as a slip where it lies outside what is expected; 0 is never one */
export function slipOf({ path, value, low, high, slack, said }: Expected): Slip[] {
  const size = Math.abs(value);
  const over = high !== null && size > high * slack;
  const under = low !== null && size > 0 && size * slack < low;
  return over || under ? [{ path, why: said }] : [];
}

/** Numbers of a shown unit that read well. */
const READABLE = { least: 1, most: 10_000 } as const;

/** @returns an expected value as it stands beside a typed one: in its unit where that reads well, else in the quantity's own */
export function beside(si: number, name: DimensionName, { unit }: Pick<TypedQuantity, "unit">): string {
  const { least, most } = READABLE;
  const known = dimension(name).shown.some(({ label }) => label === unit);
  const shown = known ? Math.abs(inUnit(si, name, unit)) : 0;
  return formatQuantity(si, name, shown >= least && shown < most ? { unit } : {});
}

/** @returns "8.00 mm to 250 mm"; a bare number without a quantity */
export function between(low: number, high: number, name: DimensionName | null): string {
  const say = (value: number) => (name ? formatQuantity(value, name) : formatFixed(value, 2));
  return `${say(low)} to ${say(high)}`;
}
