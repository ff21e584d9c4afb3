import { checkVehicle, type Vehicle, vehicleWeight } from "./vehicle.ts";

/**
 * A vehicle's holding conditions, ready to be asked millions of times. Each condition is linear in the suction and a sinusoid in the attitude,
 *
 *     a·F + p·cos θ − q·sin θ ≥ 0
 *
 * three numbers a condition: a [-], p [N], q [N]; lift-off, slide, six of tip, climb.
 */
export type HoldLaw = Float64Array;

/** First and behind-last condition of each mode; the parked modes are the conditions before climb's. */
export const CONDITIONS = {
  liftOff: [0, 1],
  slide: [1, 2],
  tip: [2, 8],
  climb: [8, 9],
} as const;
export const CONDITION_COUNT = 9;
export const NUMBERS_PER_CONDITION = 3;

/**
 * The holding conditions of one vehicle.
 *
 *     N = F + W cos θ;  lift-off N > 0;  slide μ_park·N ≥ W sin θ;  tip N_up ≥ 0 and N_down ≥ 0 for headings up, down, across;
 *     climb μ_w·N_driven ≥ W sin θ + [c_rr(1 − σ_s) + μ_s·σ_s]·N
 *
 * @param vehicle - every field in SI units [-]
 * @param law - memory to write into; new unless given [-]
 * @returns coefficients a [-], p [N], q [N] of each condition
 * @throws {OutOfRangeError} with the path of a field that can't be
 *
 * Valid for a rigid vehicle on a flat surface, the skirt's share at the wheels' own centre of pressure. Source: statics; docs/method/holding.md
 */
export function compileHold(
  vehicle: Vehicle,
  law: HoldLaw = new Float64Array(CONDITION_COUNT * NUMBERS_PER_CONDITION),
): HoldLaw {
  checkVehicle(vehicle);
  const weight = vehicleWeight(vehicle);
  const share = vehicle.skirtShare;
  const parked = vehicle.wheelFriction * (1 - share) + vehicle.skirtFriction * share;
  write(law, CONDITIONS.liftOff[0], 1, weight, 0);
  write(law, CONDITIONS.slide[0], parked, parked * weight, weight);
  const { wheelbase, track, cgHeight, cgFromRear, suctionFromRear } = vehicle;
  const first = CONDITIONS.tip[0];
  writeTip(law, first, weight, cgHeight, wheelbase, cgFromRear, suctionFromRear);
  writeTip(law, first + 2, weight, cgHeight, wheelbase, wheelbase - cgFromRear, wheelbase - suctionFromRear);
  writeTip(law, first + 4, weight, cgHeight, track, track / 2, track / 2);
  writeClimb(law, vehicle, weight);
  return law;
}

function write(law: HoldLaw, condition: number, a: number, p: number, q: number): void {
  const at = condition * NUMBERS_PER_CONDITION;
  law[at] = a;
  law[at + 1] = p;
  law[at + 2] = q;
}

/** N_up ≥ 0 and N_down ≥ 0 of two axle lines `length` apart; the distances are from the downhill line. */
function writeTip(
  law: HoldLaw,
  condition: number,
  weight: number,
  height: number,
  length: number,
  cg: number,
  suction: number,
): void {
  const lever = (weight * height) / length;
  write(law, condition, suction / length, (weight * cg) / length, lever);
  write(law, condition + 1, (length - suction) / length, (weight * (length - cg)) / length, -lever);
}

function writeClimb(law: HoldLaw, vehicle: Vehicle, weight: number): void {
  const { driven, wheelbase, cgFromRear, suctionFromRear, cgHeight } = vehicle;
  const grip = vehicle.wheelFriction * (1 - vehicle.skirtShare);
  const drag =
    vehicle.rollingResistance * (1 - vehicle.skirtShare) + vehicle.skirtFriction * vehicle.skirtShare;
  let [suctionShare, weightShare, lever] = [1, 1, 0];
  if (driven === "front") {
    [suctionShare, weightShare] = [suctionFromRear / wheelbase, cgFromRear / wheelbase];
    lever = cgHeight / wheelbase;
  } else if (driven === "rear") {
    [suctionShare, weightShare] = [1 - suctionFromRear / wheelbase, 1 - cgFromRear / wheelbase];
    lever = -cgHeight / wheelbase;
  }
  write(
    law,
    CONDITIONS.climb[0],
    grip * suctionShare - drag,
    (grip * weightShare - drag) * weight,
    (1 + grip * lever) * weight,
  );
}

/** @returns W, jolts included: what lift-off needs on a ceiling [N] */
export function weightIn(law: HoldLaw): number {
  return law[CONDITIONS.liftOff[0] * NUMBERS_PER_CONDITION + 1] ?? Number.NaN;
}

/**
 * The suction that a range of conditions needs, for this suction.
 *
 *     F_required = max (q·sin θ − p·cos θ)/a;  where a ≤ 0, none suffices unless the condition is met as it is
 *
 * @param law - from {@link compileHold} [-, N, N]
 * @param from - first condition [-]
 * @param to - behind the last condition [-]
 * @param suction - F [N], ≥ 0
 * @param sine - sin θ [-]
 * @param cosine - cos θ [-]
 * @returns suction needed [N]; 0 where none is, infinite where none suffices
 *
 * Valid for laws of {@link compileHold}; checks nothing, allocates nothing. Source: as there
 */
export function neededSuction(
  law: HoldLaw,
  from: number,
  to: number,
  suction: number,
  sine: number,
  cosine: number,
): number {
  let most = 0;
  for (let at = from * NUMBERS_PER_CONDITION; at < to * NUMBERS_PER_CONDITION; at += NUMBERS_PER_CONDITION) {
    const a = law[at] ?? Number.NaN;
    const short = (law[at + 2] ?? Number.NaN) * sine - (law[at + 1] ?? Number.NaN) * cosine;
    if (a > 0) most = Math.max(most, short / a);
    else if (a * suction < short) return Number.POSITIVE_INFINITY;
  }
  return most;
}

/**
 * Margin of a suction over what is needed.
 *
 *     F/F_required
 *
 * @param suction - F [N], ≥ 0
 * @param needed - F_required from {@link neededSuction} [N]
 * @returns margin [-]; infinite where nothing is needed, 0 where no suction suffices
 *
 * Valid for any two such numbers. Source: definition
 */
export function marginOver(suction: number, needed: number): number {
  return needed === 0 ? Number.POSITIVE_INFINITY : suction / needed;
}
