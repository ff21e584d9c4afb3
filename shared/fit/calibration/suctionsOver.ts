import type { PredictInput } from "../../physics/predict.ts";
import { solvedSuctions, tracedSuctions } from "./suctions.ts";

/** Shares of the gaps, from the narrowest on, that are tried to be followed: a curve that dips meets a wide gap's leak more than once, a narrow one's seldom. */
const SHARES = [1, 3 / 4, 1 / 2, 1 / 4];
/** Both ways agree to this where they meet; further apart they are on different branches [-]. */
const SAME_BRANCH = 1e-6;

/**
 * Pull at each of many gaps, the quick way as far as it leads.
 *
 *     gaps up to the widest from which the crossing can be followed: {@link tracedSuctions};  wider ones: {@link solvedSuctions}
 *
 * @param input - the rig as a build, all SI, its gap aside
 * @param gaps - by rising width [m], ≥ 0, five or more
 * @returns F_s at each [N], 0 where the motor does not turn
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid and source: as the two
 */
export function suctionsOver(input: PredictInput, gaps: readonly number[]): number[] {
  for (const share of SHARES) {
    const last = Math.round((gaps.length - 1) * share);
    const traced = tracedSuctions(input, gaps.slice(0, last + 1));
    if (!traced) continue;
    if (share === 1) return traced;
    const wider = solvedSuctions(input, gaps.slice(last));
    const meet = Math.abs(wider[0] - traced[last]) <= SAME_BRANCH * traced[last];
    return meet ? [...traced, ...wider.slice(1)] : solvedSuctions(input, gaps);
  }
  return solvedSuctions(input, gaps);
}
