import { fitRideHeight, type RideHeightFit } from "../fit/rideHeightFit.ts";
import type { Build } from "../model/build.ts";
import { NotEnoughDataError } from "../numeric/errors.ts";
import { type Book, oncePerBook, testsOf } from "./book.ts";
import { inUse } from "./readings/reading.ts";
import { heightInstruments, rideHeights } from "./readings/rideHeight.ts";

/** Vertical stiffness of a build's running gear, and what it rests on. */
export interface StiffnessBasis {
  /** ride-height tests of its running gear; as the build states it; not known, so taken as rigid */
  readonly basis: "measured" | "stated" | "rigid";
  /** k; null: rigid [N/m] */
  readonly value: number | null;
  /** standard uncertainty; null where none is stated [N/m] */
  readonly uncertainty: number | null;
  readonly testIds: readonly string[];
}

/** What the ride-height tests of one running gear say. */
export interface TestedGear {
  readonly fit: RideHeightFit | null;
  /** standard, the load's own included [N/m]; null without a fit */
  readonly uncertainty: number | null;
  /** in use or, where there is no fit, too few to tell */
  readonly testIds: readonly string[];
  /** why there are tests and no fit; null otherwise */
  readonly why: string | null;
}

const NOT_TESTED: TestedGear = { fit: null, uncertainty: null, testIds: [], why: null };

function answerFor(book: Book, gearId: string): TestedGear {
  const tests = testsOf(book, "ride-height").filter(({ data }) => data.gear === gearId);
  const points = tests.flatMap(({ data }, test) =>
    inUse(rideHeights(data)).map(({ load, height }) => ({ load, height, test })),
  );
  if (points.length === 0) return NOT_TESTED;
  const testIds = tests.map(({ id }) => id);
  const { loadShare, ...read } = heightInstruments(tests.map(({ data }) => data));
  try {
    const fit = fitRideHeight({ points, ...read });
    const uncertainty = Math.hypot(fit.standardErrors.stiffness, loadShare * fit.stiffness);
    return { fit, uncertainty, testIds, why: null };
  } catch (error) {
    if (error instanceof NotEnoughDataError) return { ...NOT_TESTED, testIds, why: error.message };
    throw error;
  }
}

/** @returns the fit of all ride-height tests of a running gear, or why they make none */
export function testedGear(book: Book, gearId: string): TestedGear {
  return oncePerBook(book, `gear ${gearId}`, () => answerFor(book, gearId));
}

/**
 * Vertical stiffness of a build's running gear.
 *
 * @param book - the whole bench book
 * @param build - the build
 * @returns k [N/m] by the ride-height tests of its running gear, else as it states it, else rigid
 */
export function stiffnessBasis(
  book: Book,
  build: Pick<Build, "gear" | "vehicle" | "uncertainty">,
): StiffnessBasis {
  // A record of before the fields were known says nothing of them.
  const { fit, uncertainty, testIds } = build.gear ? testedGear(book, build.gear) : NOT_TESTED;
  if (fit) return { basis: "measured", value: fit.stiffness, uncertainty, testIds };
  const value = build.vehicle.verticalStiffness ?? null;
  const stated = build.uncertainty["vehicle.verticalStiffness"] ?? null;
  if (value === null) return { basis: "rigid", value, uncertainty: null, testIds: [] };
  return { basis: "stated", value, uncertainty: stated, testIds: [] };
}
