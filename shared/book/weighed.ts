import { fitWeighing, type Weighed } from "../fit/weighFit.ts";
import type { WeighInTest } from "../model/tests/weighIn.ts";
import { STANDARD_GRAVITY } from "../physics/constants.ts";
import { toSI } from "../units/quantity.ts";
import { type Book, testsOf } from "./book.ts";
import { instrumentUncertainty, inUse, type Reading } from "./readings/reading.ts";

/** @returns a weigh-in's readings: mass by each [kg] */
export function weighings(test: WeighInTest): Reading<{ mass: number }>[] {
  return test.rows.map(({ reading, setAside }, row) => ({
    mass: toSI(reading, "load") / STANDARD_GRAVITY,
    row,
    setAside: setAside ?? null,
  }));
}

/**
 * Mass that a weigh-in found.
 *
 * @param test - as stored
 * @returns mean and standard uncertainty [kg]
 * @throws {NotEnoughDataError} without a reading in use
 */
export function weighedMass(test: WeighInTest): Weighed {
  const masses = inUse(weighings(test)).map(({ mass }) => mass);
  const { load } = test.instruments;
  const fixed = load && instrumentUncertainty({ absolute: load.absolute }, 0, "load") / STANDARD_GRAVITY;
  return fitWeighing({ masses, fixed, share: (load?.percent ?? 0) / 100 });
}

/** What a build weighs, by the newest weigh-in of the whole of it. */
export interface BuildWeighing extends Weighed {
  readonly test: string;
  /** day, YYYY-MM-DD */
  readonly date: string;
}

/** @returns the newest weigh-in of a whole build; null where it was never weighed, or every reading is set aside */
export function weighingOf(
  book: Pick<Book, "tests" | "instruments" | "plates">,
  build: string,
): BuildWeighing | null {
  const own = testsOf(book, "weigh-in").filter(
    ({ data }) => data.build === build && data.struckOut === undefined && inUse(weighings(data)).length > 0,
  );
  const newest = own.reduce<(typeof own)[number] | null>(
    (last, test) => (last && last.data.date > test.data.date ? last : test),
    null,
  );
  return newest && { ...weighedMass(newest.data), test: newest.id, date: newest.data.date };
}
