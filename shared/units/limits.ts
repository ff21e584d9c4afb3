import { type DimensionName, dimension } from "./dimensions.ts";
import { formatQuantity } from "./format.ts";

/** What a number may be, in SI; both ends belong to it. Schemas and forms read the same ones. */
export interface Limits {
  readonly min?: number;
  readonly max?: number;
  /** 0 is refused as well */
  readonly positive?: boolean;
  /** a count */
  readonly whole?: boolean;
}

/** Rounding of a unit's factor: 2000 mm is 2 m. */
const SLACK = 1e-9;

/** A limit beyond it only keeps out nonsense; naming it would not help anyone. */
const WORTH_NAMING = 1e9;

/**
 * A number held against its limits.
 *
 * @param si - in the unit of the limits
 * @returns the number, on the limit where only rounding puts it beyond; null where it is not allowed
 */
export function withinLimits(si: number, { min, max, positive, whole }: Limits): number | null {
  const low = min ?? Number.NEGATIVE_INFINITY;
  const high = max ?? Number.POSITIVE_INFINITY;
  const isInside = si >= low - SLACK * Math.abs(min ?? 0) && si <= high + SLACK * Math.abs(max ?? 0);
  if (!isInside || (positive && !(si > 0))) return null;
  if (whole && !Number.isInteger(si)) return null;
  return Math.min(high, Math.max(low, si));
}

/** What the number measures and in which unit it is said; a bare number without a quantity. */
export interface Shown {
  readonly dimension: DimensionName | null;
  readonly unit?: string;
  /** behind a bare number: "×" */
  readonly suffix?: string;
}

const isShown = (name: DimensionName, unit: string | undefined) =>
  dimension(name).shown.some(({ label }) => label === unit);

/** Behind a decimal point: a limit is exact, "1 %". */
const TRAILING_ZEROS = /(?<=\.\d*)0+(?!\d)|\.0+(?!\d)/;

function said(si: number, { dimension: name, unit, suffix = "" }: Shown): string {
  if (name) return formatQuantity(si, name, isShown(name, unit) ? { unit } : {}).replace(TRAILING_ZEROS, "");
  return suffix === "" ? String(si) : `${si}\u202f${suffix}`;
}

/** @returns limits in words: "more than 0, at most 1000 V", "0 mm to 100 mm", "a whole number, 1 to 60" */
export function limitsInWords({ min, max, positive, whole }: Limits, shown: Shown): string {
  const named = max !== undefined && max < WORTH_NAMING ? max : undefined;
  const high = named === undefined ? "" : said(named, shown);
  const kind = whole
    ? "a whole number"
    : shown.dimension === null && !positive && min === undefined
      ? "a number"
      : "";
  const range =
    min !== undefined && !positive && high !== ""
      ? `${said(min, shown)} to ${high}`
      : [
          positive ? "more than 0" : min === undefined ? "" : `at least ${said(min, shown)}`,
          high && `at most ${high}`,
        ]
          .filter(Boolean)
          .join(", ");
  return [kind, range].filter(Boolean).join(", ");
}
