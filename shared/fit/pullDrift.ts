import { NotEnoughDataError, requireFinite } from "../numeric/errors.ts";
import { minimiseScalar } from "../numeric/minimiseScalar.ts";
import { normalCdf } from "../numeric/normal.ts";
import { bestLikelihood } from "./censoredFit.ts";
import type { Bracket } from "./censoredLikelihood.ts";

export interface Drift {
  /** of F per unit of what it is held against [unit of F over unit of that] */
  readonly slope: number;
  /** 2·(L with the slope − L without) [-] */
  readonly likelihoodRatio: number;
  /** chance of as much by scatter alone: above χ² with one degree of freedom [-] */
  readonly pValue: number;
}

/** A slope that moves F by more than this many times its whole spread over the trials is no drift [-]. Judgement. */
const STEEPEST = 4;
/** Slope, mean and scatter are three: with fewer trials there is nothing left to judge by. */
const LEAST_TRIALS = 4;
/** L of a slope that can't be: lower than any that can [-]. */
const NEVER = -1e6;
/** Places to either side of 0 that are looked at before the hill is followed up: one step of theirs moves F by its whole spread. */
const PLACES = STEEPEST;
/** Of the slope, relative: far below its own uncertainty [-]. */
const TOLERANCE = 1e-6;

/**
 * Whether a strength drifts with something else, by likelihood ratio.
 *
 *     F = m + b·(t − t̄) + scatter:  2·[max L(m, s, b) − max L(m, s, 0)] against χ²₁
 *
 * @param brackets - low, high [unit of F], count [-]
 * @param against - t of each trial: a voltage [V], its place in the order [-]
 * @returns slope [unit of F over unit of t], ratio [-], p-value [-]
 * @throws {NotEnoughDataError} on fewer than four trials, or all at one t; as {@link bestLikelihood}
 * @throws {OutOfRangeError} on a t that is not finite
 *
 * Valid for independent trials; with ten or fewer the p-value is somewhat too small. Source: Wilks, Ann. Math. Stat. 9 (1938) 60–62
 */
export function fitDrift(brackets: readonly Bracket[], against: readonly number[]): Drift {
  const t = against.map((value, i) => requireFinite(`against.${i}`, value));
  const middle = t.reduce((sum, value) => sum + value, 0) / t.length;
  const reach = Math.max(...t) - Math.min(...t);
  if (brackets.length < LEAST_TRIALS || !(reach > 0))
    throw new NotEnoughDataError(
      brackets.length < LEAST_TRIALS
        ? `A drift needs ${LEAST_TRIALS} pulls or more, there are ${brackets.length}.`
        : "All pulls were made at one place: no drift can show.",
      "Repeat the pulls, some with a full pack and some with an empty one.",
      "trials",
    );
  const likelihood = (slope: number) => bestLikelihood(takenOut(brackets, (i) => slope * (t[i] - middle)));
  const without = likelihood(0);
  const steepest = (STEEPEST * spreadOf(brackets)) / reach;
  const slope = bestSlope(orNever(likelihood), steepest, without);
  const likelihoodRatio = Math.max(0, 2 * (likelihood(slope) - without));
  return { slope, likelihoodRatio, pValue: 2 * normalCdf(-Math.sqrt(likelihoodRatio)) };
}

function takenOut(brackets: readonly Bracket[], shift: (i: number) => number): Bracket[] {
  return brackets.map(({ low, high, count }, i) => ({ low: low - shift(i), high: high - shift(i), count }));
}

/** A slope at which no strength can be told is not the best one. */
function orNever(likelihood: (slope: number) => number): (slope: number) => number {
  return (slope) => {
    try {
      return likelihood(slope);
    } catch (error) {
      if (error instanceof NotEnoughDataError) return NEVER;
      throw error;
    }
  };
}

/** L over the slopes has one hill (it is concave in m/s, 1/s and b/s): it is found on a grid, then followed to its top. */
function bestSlope(likelihood: (slope: number) => number, steepest: number, atNone: number): number {
  const step = steepest / PLACES;
  let best = 0;
  let top = atNone;
  for (let i = -PLACES; i <= PLACES; i++) {
    if (i === 0) continue;
    const slope = i * step;
    const value = likelihood(slope);
    if (value > top) [best, top] = [slope, value];
  }
  const found = minimiseScalar((slope) => -likelihood(slope), best - step, best + step, {
    tolerance: TOLERANCE,
  });
  return -found.value > top ? found.x : best;
}

function spreadOf(brackets: readonly Bracket[]): number {
  const bounds = brackets.flatMap(({ low, high }) => [low, high]).filter(Number.isFinite);
  return Math.max(...bounds) - Math.min(...bounds) || Math.max(...bounds.map(Math.abs)) || 1;
}
