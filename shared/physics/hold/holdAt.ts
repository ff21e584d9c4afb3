import { OutOfRangeError, requireNonNegative } from "../../numeric/errors.ts";
import { cosineOfDegrees, sineOfDegrees } from "./angle.ts";
import {
  CONDITION_COUNT,
  CONDITIONS,
  compileHold,
  type HoldLaw,
  marginOver,
  NUMBERS_PER_CONDITION,
  neededSuction,
} from "./law.ts";
import type { Vehicle } from "./vehicle.ts";

export type ParkedMode = "liftOff" | "slide" | "tip";
export type Mode = ParkedMode | "climb";

/** Margin of a state and the modes that set it: null and none where no suction is needed, 0 where none suffices. */
export interface StateMargin<M extends Mode = Mode> {
  readonly margin: number | null;
  readonly governs: readonly M[];
}

export interface Hold {
  /** θ: 0 floor, 90 wall, 180 ceiling [°] */
  readonly angle: number;
  /** suction that each mode needs [N]; 0 where none is, infinite where none suffices */
  readonly required: Readonly<Record<Mode, number>>;
  /** F/F_required [-] */
  readonly margins: Readonly<Record<Mode, number | null>>;
  readonly parked: StateMargin<ParkedMode>;
  readonly driving: StateMargin;
}

export const PARKED_MODES = ["liftOff", "slide", "tip"] as const;
export const MODES = [...PARKED_MODES, "climb"] as const;
/** Margins closer than this, relatively, tie. */
const TIE = 1e-9;

/**
 * How a vehicle holds on one attitude with a given suction.
 *
 *     margin = F/F_required of lift-off, slide, tip and climb;  parked: the least of the first three;  driving: the least of all
 *
 * @param law - the vehicle, from {@link compileHold} [-, N, N]
 * @param suction - F_s [N], ≥ 0
 * @param angleDegrees - θ of the surface: 0 floor, 90 wall, 180 ceiling [°]
 * @returns angle [°], suction required [N] and margin [-] of each mode, the least parked and driving [-]
 * @throws {OutOfRangeError} on a negative suction, an angle beyond 0…180
 *
 * Valid for a rigid vehicle on a flat surface, at rest or in slow motion nose uphill. Source: statics; docs/method/holding.md
 */
export function holdOf(law: HoldLaw, suction: number, angleDegrees: number): Hold {
  requireNonNegative("suction", suction);
  requireAngle(angleDegrees);
  const sine = sineOfDegrees(angleDegrees);
  const cosine = cosineOfDegrees(angleDegrees);
  const need = (mode: Mode) =>
    neededSuction(law, CONDITIONS[mode][0], CONDITIONS[mode][1], suction, sine, cosine);
  const required = { liftOff: need("liftOff"), slide: need("slide"), tip: need("tip"), climb: need("climb") };
  const limit = (mode: Mode) => finiteOrNull(marginOver(suction, required[mode]));
  const margins = {
    liftOff: limit("liftOff"),
    slide: limit("slide"),
    tip: limit("tip"),
    climb: limit("climb"),
  };
  return { angle: angleDegrees, required, ...marginsToHold(margins) };
}

/** @returns margins of the modes with the least of each state [-] */
export function marginsToHold(
  margins: Readonly<Record<Mode, number | null>>,
): Pick<Hold, "margins" | "parked" | "driving"> {
  return { margins, parked: leastOf(PARKED_MODES, margins), driving: leastOf(MODES, margins) };
}

function finiteOrNull(margin: number): number | null {
  return margin === Number.POSITIVE_INFINITY ? null : margin;
}

function leastOf<M extends Mode>(
  modes: readonly M[],
  margins: Readonly<Record<Mode, number | null>>,
): StateMargin<M> {
  let least = Number.POSITIVE_INFINITY;
  for (const mode of modes) least = Math.min(least, margins[mode] ?? Number.POSITIVE_INFINITY);
  if (least === Number.POSITIVE_INFINITY) return { margin: null, governs: [] };
  const governs = modes.filter((mode) => (margins[mode] ?? Number.POSITIVE_INFINITY) <= least * (1 + TIE));
  return { margin: least, governs };
}

/**
 * Suction that keeps a vehicle on one attitude.
 *
 *     the smallest F ≥ 0 that meets every condition
 *
 * @param vehicle - every field in SI units [-]
 * @param angleDegrees - θ of the surface [°], 0…180
 * @returns suction for parking and for driving nose uphill [N]; infinite where none suffices
 * @throws {OutOfRangeError} on a vehicle that can't be, an angle beyond 0…180
 *
 * Valid and source: as {@link holdOf}
 */
export function requiredSuction(
  vehicle: Vehicle,
  angleDegrees: number,
): { readonly parked: number; readonly driving: number } {
  requireAngle(angleDegrees);
  const law = compileHold(vehicle);
  return {
    parked: smallestSuction(law, CONDITIONS.tip[1], angleDegrees),
    driving: smallestSuction(law, CONDITION_COUNT, angleDegrees),
  };
}

/** A condition with a < 0 sets a most; where the least exceeds it, no suction meets all. */
function smallestSuction(law: HoldLaw, conditions: number, angleDegrees: number): number {
  const sine = sineOfDegrees(angleDegrees);
  const cosine = cosineOfDegrees(angleDegrees);
  let least = 0;
  for (let i = 0; i < conditions * NUMBERS_PER_CONDITION; i += NUMBERS_PER_CONDITION) {
    const [a = Number.NaN, p = Number.NaN, q = Number.NaN] = law.subarray(i, i + NUMBERS_PER_CONDITION);
    if (a > 0) least = Math.max(least, (q * sine - p * cosine) / a);
  }
  return Math.max(least, neededSuction(law, 0, conditions, least, sine, cosine));
}

function requireAngle(angleDegrees: number): void {
  if (!(angleDegrees >= 0 && angleDegrees <= 180))
    throw new OutOfRangeError("angle", angleDegrees, "0 to 180");
}
