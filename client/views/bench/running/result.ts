import { NotEnoughDataError, OutOfRangeError } from "../../../../shared/numeric/errors.ts";
import { decimalsFor, formatFixed } from "../../../../shared/units/format.ts";
import type { MarkWord } from "../../../ui/Mark.tsx";
import type { Sketch } from "./sketch.ts";

export interface Figure {
  readonly label: string;
  readonly text: string;
  readonly mark?: MarkWord;
}

/** What the readings so far say, while more of them are typed. */
export interface Running {
  readonly figures: readonly Figure[];
  /** by the row's key: what that row alone says */
  readonly byRow: ReadonlyMap<number, string>;
  /** what to measure or to give next; null where nothing is missing */
  readonly next: string | null;
  readonly notes: readonly string[];
  /** the readings so far, drawn; null while there are none */
  readonly sketch: Sketch | null;
}

export const NOTHING_YET: Running = {
  figures: [],
  byRow: new Map(),
  next: null,
  notes: [],
  sketch: null,
};

/** A row that could be read, as the form knows it. */
export interface RowName {
  readonly key: number;
  /** its place in the form, from 1 */
  readonly number: number;
}

/** @returns a number to so many significant digits; a dash where there is none */
export function digits(value: number, count = 3): string {
  return formatFixed(value, decimalsFor(value, count));
}

/** More digits than these no instrument of a bench has [significant digits]. */
const MOST_DIGITS = 5;

/** @returns value ± standard error, the error to two digits; readings that happen to fit all too well show no more of the value than an instrument could */
export function withError(value: number, error: number | null): string {
  if (error === null || !(error > 0) || !Number.isFinite(error)) return digits(value);
  const decimals = decimalsFor(error, 2);
  const most = decimalsFor(value, MOST_DIGITS);
  if (value !== 0 && decimals > most) return `${formatFixed(value, most)} ± ${digits(error, 1)}`;
  return `${formatFixed(value, decimals)} ± ${formatFixed(error, decimals)}`;
}

/**
 * Runs a fit on readings that may be too few or odd.
 *
 * @returns what it found, and in words what it lacks: the fit's own wish for the next reading, or what can't be
 */
export function attempt<T>(compute: () => T): { readonly found: T | null; readonly next: string | null } {
  try {
    return { found: compute(), next: null };
  } catch (error) {
    if (error instanceof NotEnoughDataError) return { found: null, next: error.need };
    if (error instanceof OutOfRangeError)
      return {
        found: null,
        next: `Look at ${error.quantity.replaceAll(".", " ")}: ${digits(error.value)} can't be, allowed: ${error.allowed}.`,
      };
    throw error;
  }
}
