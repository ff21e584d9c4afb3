import { type Hold, holdOf, type ParkedMode, type StateMargin } from "./holdAt.ts";
import { CONDITION_COUNT, CONDITIONS, compileHold, type HoldLaw, NUMBERS_PER_CONDITION } from "./law.ts";
import type { Vehicle } from "./vehicle.ts";

export interface Worst {
  readonly parked: StateMargin<ParkedMode> & { readonly angle: number };
  readonly driving: StateMargin & { readonly angle: number };
}

/**
 * The attitude on which a vehicle holds worst, parked and driving.
 *
 *     each condition needs most at θ* = atan2(q, −p), or at 0° or 180° where θ* lies outside;  friction alone: θ* = 180° − arctan(1/μ)
 *
 * @param vehicle - every field in SI units [-]
 * @param suction - F_s [N], ≥ 0
 * @returns angle [°], margin [-] and the modes that set it, for parking and for driving nose uphill
 * @throws {OutOfRangeError} on a vehicle that can't be, a negative suction
 *
 * Valid for attitudes 0…180°. Where no suction suffices on a range of attitudes, the one with the largest shortfall is given.
 * Source: maximum of a sinusoid; docs/method/holding.md
 */
export function worstAngle(vehicle: Vehicle, suction: number): Worst {
  return worstOf(compileHold(vehicle), suction);
}

/**
 * The attitude on which a compiled vehicle holds worst; {@link worstAngle} for many suctions of one vehicle.
 *
 *     as {@link worstAngle}
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param suction - F_s [N], ≥ 0
 * @returns angle [°], margin [-] and the modes that set it, for parking and for driving nose uphill
 * @throws {OutOfRangeError} on a negative suction
 *
 * Valid and source: as {@link worstAngle}
 */
export function worstOf(law: HoldLaw, suction: number): Worst {
  const parked: Hold = holdOf(law, suction, worstAttitude(law, CONDITIONS.tip[1], suction));
  const driving: Hold = holdOf(law, suction, worstAttitude(law, CONDITION_COUNT, suction));
  return {
    parked: { angle: parked.angle, ...parked.parked },
    driving: { angle: driving.angle, ...driving.driving },
  };
}

/**
 * The attitude at which a vehicle's first conditions need most suction, for loops.
 *
 *     the largest of the conditions' own maxima
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param conditions - how many of its conditions count: those of parking, or all [-]
 * @param suction - F_s [N], ≥ 0
 * @returns θ of the least margin [°]
 *
 * Valid for laws of {@link compileHold}; checks nothing. Source: as {@link worstAngle}
 */
export function worstAttitude(law: HoldLaw, conditions: number, suction: number): number {
  let [worst, most, shortfall] = [180, Number.NEGATIVE_INFINITY, 0];
  for (let at = 0; at < conditions * NUMBERS_PER_CONDITION; at += NUMBERS_PER_CONDITION) {
    const a = law[at] ?? Number.NaN;
    const p = law[at + 1] ?? Number.NaN;
    const q = law[at + 2] ?? Number.NaN;
    const short = q > 0 ? Math.hypot(p, q) : Math.abs(p);
    if (a > 0 && short / a > most) [worst, most] = [steepestDegrees(p, q), short / a];
    if (!(a > 0) && short - a * suction > shortfall)
      [worst, most, shortfall] = [steepestDegrees(p, q), Number.POSITIVE_INFINITY, short - a * suction];
  }
  return worst;
}

/** Where q·sin θ − p·cos θ is largest on 0…180°. */
function steepestDegrees(p: number, q: number): number {
  if (!(q > 0)) return p > 0 ? 180 : 0;
  return (Math.atan2(q, -p) * 180) / Math.PI;
}
