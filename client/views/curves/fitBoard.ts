import { type Board, type Row, type Told, type Working, workedOut } from "../../../shared/physics/working.ts";
import type { Source } from "./chosen.ts";

/** What every fit is told with. */
export interface Fitted {
  readonly told: Told;
  readonly value: number;
  /** standard error, in the unit of the figure; null where nothing is left over to judge it by */
  readonly error: number | null;
  readonly rows: readonly Row[];
}

const READINGS = ["n", "readings in use", ""] as const;

/** @returns the workings of fitted figures; each reading is a number of one test, so the count leads down to them all */
export function fitBoard(fits: readonly Fitted[], readings: readonly Source[]): Board {
  const count = readings.length;
  const workings = fits.map(({ told, value, error, rows }): Working => {
    const own: Row[] =
      error === null ? [] : [[[`s_${told.output[0]}`, "standard error", told.output[1]], error]];
    return workedOut(told, [[READINGS, count], ...rows, ...own], value);
  });
  const tests = [...new Set(readings.map(({ testId }) => testId))];
  const what = "Readings of these tests that are not set aside.";
  return { workings, origins: [{ symbol: "n", value: count, what, tests }] };
}

/** @returns those that are not set aside */
export const inUse = <T extends { readonly aside: string | null }>(readings: readonly T[]): T[] =>
  readings.filter(({ aside }) => aside === null);
