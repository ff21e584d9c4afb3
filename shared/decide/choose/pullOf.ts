import { suctionAt } from "../../physics/assembly.ts";
import { jointFriction, jointVelocity, WARM, WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import type { FittedSkirt, PlacedSkirt } from "./fittedSkirt.ts";
import type { Prepared } from "./prepare.ts";

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
 * F_s of a set that the fast solvers solved.
 *
 *     κ·Δp(A + σ_l·P·ℓ) + ρQ²·cos α/A_out, σ_l the mean over the lip beside a joint and over it
 *
 * @param prepared - the question
 * @param fitted - the set's skirt, for κ [-]
 * @param place - the same skirt as it stands, on the surface or over a joint
 * @param c - the case, the leak of that place in it
 * @param solution - of the case
 * @returns F_s, jet included [N]
 *
 * Valid for leaks that are fast cases; allocates nothing. Source: docs/method/holding.md
 */
export function fastSuction(
  prepared: Prepared,
  { pullFactor }: Pick<FittedSkirt, "pullFactor">,
  { lip, area, lipArea, overJoint }: PlacedSkirt,
  c: Float64Array,
  solution: Float64Array,
): number {
  const pressure = solution[WARM_RESULT.pressure];
  const flow = solution[WARM_RESULT.flow];
  let share = shareBeside(c, lip, pressure, solution[WARM_RESULT.gapVelocity]);
  if (overJoint > 0) share += overJoint * (shareOver(c, pressure) - share);
  return pullFactor * pressure * (area + share * lipArea) + prepared.air.density * flow * flow * prepared.jet;
}

/**
 * F_s of a scanned set, by the prediction's own law.
 *
 *     as {@link suctionAt}
 *
 * @param prepared - the question
 * @param fitted - the set's skirt, for κ [-]
 * @param place - the same skirt as it stands, on the surface or over a joint
 * @param solution - of the scan
 * @returns F_s, jet included [N]
 *
 * Valid for any leak. Source: as {@link suctionAt}
 */
export function scannedSuction(
  { problem, air }: Prepared,
  { pullFactor }: Pick<FittedSkirt, "pullFactor">,
  { skirt, leak }: PlacedSkirt,
  solution: Float64Array,
): number {
  const [pressure, flow] = [solution[WARM_RESULT.pressure], solution[WARM_RESULT.flow]];
  const vehicle = { ...problem.fixed.vehicle, pullFactor };
  return suctionAt({ skirt, vehicle }, { leak, air }, pressure, flow);
}
