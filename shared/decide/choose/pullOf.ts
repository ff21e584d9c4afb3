import { suctionAt } from "../../physics/assembly.ts";
import { caseShare } from "../../physics/point/caseShare.ts";
import { WARM_RESULT } from "../../physics/point/newtonWarm.ts";
import type { FittedSkirt, PlacedSkirt } from "./fittedSkirt.ts";
import type { Prepared } from "./prepare.ts";

/**
 * F_s of a combination that the fast solvers solved.
 *
 *     κ·Δp(A + σ_l·P·ℓ) + ρQ²·cos α/A_out, σ_l the mean over the lip beside a joint and over it
 *
 * @param prepared - the question
 * @param fitted - the combination's skirt, for κ [-]
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
  const share = caseShare(c, solution, lip, overJoint);
  return pullFactor * pressure * (area + share * lipArea) + prepared.air.density * flow * flow * prepared.jet;
}

/**
 * F_s of a scanned combination, by the prediction's own law.
 *
 *     as {@link suctionAt}
 *
 * @param prepared - the question
 * @param fitted - the combination's skirt, for κ [-]
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
