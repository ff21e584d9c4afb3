import { jointFriction, jointVelocity, WARM, WARM_RESULT } from "./newtonWarm.ts";

/** Half of the friction under the land is missing from the pull: σ_l = 1 − ½Δp_f/Δp. */
const HALF = 0.5;

function frictionUnderLand(c: Float64Array, w: number): number {
  if (w <= c[WARM.gapCrossing]) return c[WARM.gapLaminar] * w;
  return c[WARM.gapTurbulent] * w * w * Math.sqrt(Math.sqrt(1 / w));
}

/** σ_l beside a joint; 1/(2x) under a measured leak, whose x is 1 where nothing was measured and nothing passes the lip. */
function shareBeside(c: Float64Array, lip: boolean, pressure: number, w: number): number {
  if (!(lip && pressure > 0)) return HALF / c[WARM.leakExponent];
  return 1 - (HALF * frictionUnderLand(c, w)) / pressure;
}

function shareOver(c: Float64Array, pressure: number): number {
  return pressure > 0 ? 1 - (HALF * jointFriction(c, jointVelocity(c, pressure))) / pressure : HALF;
}

/**
 * Mean share of the suction that acts under the lip's land, of a case that the fast solvers solved.
 *
 *     σ_l as `lipShare` has it, the mean over the lip beside a joint and over it
 *
 * @param c - the case, laid out as {@link WARM}, SI
 * @param solution - of the case, laid out as {@link WARM_RESULT}, SI
 * @param lip - whether its flow under the lip is found by its velocity
 * @param overJoint - part of the lip over a joint [-]
 * @returns σ_l [-]
 *
 * Valid for leaks that are fast cases; allocates nothing. Source: docs/method/holding.md
 */
export function caseShare(c: Float64Array, solution: Float64Array, lip: boolean, overJoint: number): number {
  const pressure = solution[WARM_RESULT.pressure];
  const share = shareBeside(c, lip, pressure, solution[WARM_RESULT.gapVelocity]);
  return overJoint > 0 ? share + overJoint * (shareOver(c, pressure) - share) : share;
}
