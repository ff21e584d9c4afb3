import { cosineOfDegrees, sineOfDegrees } from "./angle.ts";
import { holdOf } from "./holdAt.ts";
import { CONDITIONS, compileHold, NUMBERS_PER_CONDITION } from "./law.ts";
import type { Vehicle } from "./vehicle.ts";
import { worstOf } from "./worst.ts";

/** A vehicle whose wheels' friction is not known. */
export type UngrippedVehicle = Omit<Vehicle, "wheelFriction">;

/** Least friction of the wheels that keeps a margin [-]; null where none does: it lifts off or tips. */
export interface LeastFriction {
  readonly parked: number | null;
  readonly driving: number | null;
}

/** The smallest g ≥ 0 with slope·g ≥ short. */
function leastOf(slope: number, short: number): number | null {
  if (short <= 0) return 0;
  return slope > 0 ? short / slope : null;
}

/** A condition is linear in μ_w: it is read off at 0 and at 1. */
function leastAt(vehicle: UngrippedVehicle, mode: "slide" | "climb", suction: number, angle: number) {
  const at = CONDITIONS[mode][0] * NUMBERS_PER_CONDITION;
  const [sine, cosine] = [sineOfDegrees(angle), cosineOfDegrees(angle)];
  const excess = (wheelFriction: number): number => {
    const [a, p, q] = compileHold({ ...vehicle, wheelFriction }).subarray(at, at + NUMBERS_PER_CONDITION);
    return a * suction + p * cosine - q * sine;
  };
  const none = excess(0);
  return leastOf(excess(1) - none, -none);
}

/** Of the pull made and of the part of it that is needed: where drag eats what grip gives, more pull is no help. */
function atBoth(vehicle: UngrippedVehicle, mode: "slide" | "climb", pulls: readonly number[], angle: number) {
  const each = pulls.map((pull) => leastAt(vehicle, mode, pull, angle));
  return each.reduce<number | null>(
    (most, least) => (most === null || least === null ? null : Math.max(most, least)),
    0,
  );
}

/**
 * Least friction of the wheels with which a vehicle keeps a margin on one attitude.
 *
 *     slide: μ_park ≥ W sin θ/(F/m + W cos θ), μ_park = μ_w(1 − σ_s) + μ_s·σ_s;  climb likewise, from its own condition
 *
 * @param vehicle - every field in SI units, but for the friction of the wheels [-]
 * @param suction - F_s [N], ≥ 0
 * @param angleDegrees - θ of the surface: 0 floor, 90 wall, 180 ceiling [°]
 * @param margin - m wanted, 1 unless given [-]
 * @returns μ_w parked and driving nose uphill [-]; null where no friction does it
 * @throws {OutOfRangeError} on a vehicle that can't be, a negative suction, an angle beyond 0…180
 *
 * Valid as {@link holdOf}, whose slide and climb it turns round. Source: statics; docs/method/holding.md
 */
export function leastFriction(
  vehicle: UngrippedVehicle,
  suction: number,
  angleDegrees: number,
  margin = 1,
): LeastFriction {
  const { margins } = holdOf(compileHold({ ...vehicle, wheelFriction: 0 }), suction, angleDegrees);
  const kept = [margins.liftOff, margins.tip].every((known) => known === null || known >= margin);
  if (!kept) return { parked: null, driving: null };
  const pulls = [suction, suction / margin];
  const parked = atBoth(vehicle, "slide", pulls, angleDegrees);
  const climb = atBoth(vehicle, "climb", pulls, angleDegrees);
  return { parked, driving: parked === null || climb === null ? null : Math.max(parked, climb) };
}

/** More than any wheel grips [-]. */
const MOST_FRICTION = 100;
const HALVINGS = 50;

function leastThat(holds: (friction: number) => boolean): number | null {
  if (!holds(MOST_FRICTION)) return null;
  let [low, high] = [0, MOST_FRICTION];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * Least friction of the wheels with which a vehicle keeps a margin from floor over wall to ceiling.
 *
 *     the least μ_w whose worst attitude keeps m;  parked and without a skirt's share: 1/√((F/mW)² − 1)
 *
 * @param vehicle - every field in SI units, but for the friction of the wheels [-]
 * @param suction - F_s [N], ≥ 0
 * @param margin - m wanted, 1 unless given [-]
 * @returns μ_w parked and driving nose uphill, to 1e-13 [-]; null where none up to 100 does it
 * @throws {OutOfRangeError} on a vehicle that can't be, a negative suction
 *
 * Valid as {@link worstAngle}. Source: halving; docs/method/holding.md
 */
export function leastFrictionAnywhere(vehicle: UngrippedVehicle, suction: number, margin = 1): LeastFriction {
  const least = (state: "parked" | "driving") =>
    leastThat((wheelFriction) => {
      const known = worstOf(compileHold({ ...vehicle, wheelFriction }), suction)[state].margin;
      return known === null || known >= margin;
    });
  return { parked: least("parked"), driving: least("driving") };
}
