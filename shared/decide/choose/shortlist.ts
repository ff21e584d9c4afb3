import { predictAny } from "../../physics/predictAny.ts";
import { type StatedUncertainty, uncertaintyOf } from "../uncertainty.ts";
import { inputOf } from "./input.ts";
import { placesOf } from "./places.ts";
import type { Prepared } from "./prepare.ts";
import { leastOf, placed, spreadsOf, type WantedLeast } from "./wantedLeast.ts";

/** What the uncertainty of a combination's numbers makes of its margin. */
export interface CombinationUncertainty extends WantedLeast {
  readonly index: number;
}

/**
 * P(hold) and the 5 % margin of one combination: for a shortlist, since each takes thousands of solves.
 *
 *     doubtOf at every wanted attitude; the least of each
 *
 * @param prepared - the question
 * @param index - of the combination [-]
 * @param asked - standard uncertainties by path, correlations, samples, seed
 * @returns chance and margins [-]
 * @throws {OutOfRangeError} as {@link uncertaintyOf}
 * @throws {NotEnoughDataError} as {@link uncertaintyOf}
 *
 * Valid as {@link uncertaintyOf}; all attitudes together hold no more often than the least of them. Source: docs/method/uncertainty.md
 */
export function combinationUncertainty(
  prepared: Prepared,
  index: number,
  asked: Omit<StatedUncertainty, "angles">,
): CombinationUncertainty {
  const input = inputOf(prepared.problem, placesOf(prepared.radix, index));
  const wanted = placed(prepared.problem.wants.attitudes, () => predictAny(input, []).worst);
  const angles = [...new Set(wanted.map(({ angle }) => angle))];
  const { attitudes } = uncertaintyOf(input, { ...asked, angles });
  return { index, ...leastOf(spreadsOf(wanted, attitudes)) };
}

/** A combination in a ranking, with the uncertainty of what it is ranked by. */
export interface Ranked {
  readonly index: number;
  readonly value: number;
  /** standard deviation of the value, ≥ 0 [same unit] */
  readonly deviation: number;
}

/**
 * Places of ranked combinations, ties sharing one.
 *
 *     a tie with the first of its place: |v − v₁| ≤ √(s² + s₁²)
 *
 * @param ranked - combinations in the order of their rank, best first
 * @returns the place of each, from 1 up; combinations that differ from the first of a place by less than their uncertainty share it [-]
 *
 * Valid for independent uncertainties; combinations that share parts differ by less uncertainty than this says, so it calls a tie too often rather than too seldom
 */
export function placesWithTies(ranked: readonly Ranked[]): number[] {
  let first = ranked[0];
  let place = 1;
  return ranked.map((combination, i) => {
    const apart = Math.abs(combination.value - first.value);
    if (apart > Math.hypot(combination.deviation, first.deviation)) {
      first = combination;
      place = i + 1;
    }
    return place;
  });
}
