import { fitLeak, type LeakFit } from "../fit/leakFit.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import type { MeasuredLeak } from "../physics/restriction/measuredLeak.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, findById, oncePerBook, testsOf } from "./book.ts";
import type { GapBasis } from "./gapBasis.ts";
import { leakPoints } from "./readings/leak.ts";
import { airOfDay, inUse } from "./readings/reading.ts";

export interface LeakBasis {
  readonly leak: MeasuredLeak;
  readonly fit: LeakFit;
  readonly testIds: readonly string[];
  /** how far each test's flows lie above the common fit, in the mean of ln Q [-] */
  readonly offsets: readonly number[];
}

/** The tests of one skirt on one surface at one gap. */
export interface TestedLeak {
  readonly basis: LeakBasis | null;
  /** in use or, where there is no basis, too few to tell */
  readonly testIds: readonly string[];
  /** why there are tests and no basis; null otherwise */
  readonly why: string | null;
}

type LeakGap = Pick<GapBasis, "value" | "standing">;

/** Shims closer than this to the gap asked for count as that gap [m]. */
const SAME_GAP = 1e-6;

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** A test at the gap as set was taken at the very gap that the vehicle stands on, whatever number that gap is now given [m]. */
function gapOfTest(shim: number | null, stated: number, standing: number): number {
  return shim === null || Math.abs(shim - stated) < SAME_GAP ? standing : shim;
}

type Point = Parameters<typeof fitLeak>[0]["points"][number];

function offsetOf(points: readonly Point[], { coefficient, exponent }: LeakFit): number[] {
  const above = points.map(({ pressure, flow }) => Math.log(flow / (coefficient * pressure ** exponent)));
  return above.length > 0 ? [mean(above)] : [];
}

function answerFor(book: Book, skirtId: string, surfaceId: string, { value, standing }: LeakGap): TestedLeak {
  const stated = findById(book.skirts, skirtId)?.data.gap;
  const tests = testsOf(book, "leak").filter(({ data }) => {
    if (stated === undefined || data.skirt !== skirtId || data.surface !== surfaceId) return false;
    const shim = data.gap ? toSI(data.gap, "length") : null;
    return Math.abs(gapOfTest(shim, stated, standing) - value) < SAME_GAP;
  });
  const points = tests.flatMap((test) => inUse(leakPoints(test.data)));
  const testIds = tests.map((test) => test.id);
  if (points.length === 0) return { basis: null, testIds: [], why: null };
  const airs = tests.map((test) => airOfDay(test.data.air));
  const density = mean(airs.map((air) => air.density));
  const viscosity = mean(airs.map((air) => air.viscosity));
  try {
    const fit = fitLeak({ points });
    const leak = { coefficient: fit.coefficient, exponent: fit.exponent, density, viscosity };
    const offsets = tests.flatMap((test) => offsetOf(inUse(leakPoints(test.data)), fit));
    return { basis: { leak, fit, testIds, offsets }, testIds, why: null };
  } catch (error) {
    if (error instanceof NotEnoughDataError) return { basis: null, testIds, why: error.message };
    throw error;
  }
}

/** @returns what the leak tests of a skirt on a surface at one gap say, or why they say nothing */
export function testedLeak(book: Book, skirtId: string, surfaceId: string, gap: LeakGap): TestedLeak {
  return oncePerBook(book, `leak ${skirtId} ${surfaceId} ${gap.value} ${gap.standing}`, () =>
    answerFor(book, skirtId, surfaceId, gap),
  );
}

/**
 * The leak measured with a skirt on a surface at one gap, to stand in the gap's place.
 *
 * @param book - the whole bench book
 * @param skirtId - of the skirt
 * @param surfaceId - of the surface
 * @param gap - asked for, and the one that the vehicle stands on as set [m]
 * @returns the fitted leak and its tests; null where no leak test says it
 *
 * Valid where a test without a shim was taken with the skirt as it is set: its gap then is the standing one, calibrated or not. Source: docs/method/restriction.md, Measured leak; docs/method/calibration.md, In the predictions
 */
export function leakBasis(book: Book, skirtId: string, surfaceId: string, gap: LeakGap): LeakBasis | null {
  return testedLeak(book, skirtId, surfaceId, gap).basis;
}
