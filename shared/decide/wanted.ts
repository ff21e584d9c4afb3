import { OutOfRangeError } from "../numeric/errors.ts";
import { cosineOfDegrees, sineOfDegrees } from "../physics/hold/angle.ts";
import { leastMarginUnder, worstAttitudeUnder } from "../physics/hold/holdUnder.ts";
import { CONDITION_COUNT, CONDITIONS, compileHold } from "../physics/hold/law.ts";
import { type Pull, pullOf, rideHeightOf, rigidPull } from "../physics/hold/pull.ts";
import type { Vehicle } from "../physics/hold/vehicle.ts";
import { type Point, type PredictInput, pulledBy } from "../physics/predict.ts";
import { type AnyPredictInput, isPropeller } from "../physics/predictAny.ts";
import { type PropellerPoint, predictPropeller } from "../physics/propeller.ts";

/** Which margin is wanted. */
export interface Wanted {
  /** θ [°], or the vehicle's own worst */
  readonly attitude: number | "worst";
  readonly mode: "parked" | "driving";
}

/** The pull of a build, and the point it comes from; null: the rotor stands. */
export interface Pulled {
  /** with the gap as set [N] */
  readonly suction: number;
  /** at another stand-off [m] → [N]; null: no gap plays a part, as with a propeller */
  readonly byGap: ((gap: number) => number) | null;
  readonly point: Point | PropellerPoint | null;
}

/**
 * The pull of a build of either kind.
 *
 *     F_s of {@link predict}, or T of {@link predictPropeller};  0 where it would push off
 *
 * @param build - ducted, or with a propeller, all SI [-]
 * @returns pull [N] and operating point
 * @throws {OutOfRangeError} with the path of a number that can't be
 * @throws {NotEnoughDataError} where the rotor's curve does not reach down to the leak
 *
 * Valid and source: as the two
 */
export function pulled(build: AnyPredictInput): Pulled {
  if (isPropeller(build)) {
    const { suction, point } = predictPropeller(build, []);
    return { suction, byGap: null, point };
  }
  const { suction, byGap, point } = pulledBy(build);
  return { suction: Math.max(0, suction), byGap, point };
}

/** @returns the pull by the load on a build's vehicle: rigid unless its running gear gives [N] */
export function pullBy(build: AnyPredictInput, { suction, byGap }: Pick<Pulled, "suction" | "byGap">): Pull {
  if (isPropeller(build) || !byGap) return rigidPull(suction);
  return pullOf(suction, rideHeightOf(build.vehicle, build.skirt.gap), byGap);
}

/**
 * The margin of a pull on the attitude that is wanted.
 *
 *     F_s/F_required(θ), the least over θ for the worst; each mode at its own limit where the gap gives
 *
 * @param vehicle - every field in SI units [-]
 * @param pull - rigid or giving [N]
 * @param wanted - attitude [°] and whether parked or driving
 * @returns margin [-]; infinite where nothing is needed, 0 where no suction suffices
 * @throws {OutOfRangeError} on a vehicle that can't be, an attitude beyond 0…180°
 *
 * Valid as the holding conditions. Source: docs/method/holding.md
 */
export function wantedMargin(vehicle: Vehicle, pull: Pull, wanted: Wanted): number {
  const law = compileHold(vehicle);
  const conditions = wanted.mode === "parked" ? CONDITIONS.tip[1] : CONDITION_COUNT;
  const angle = wanted.attitude === "worst" ? worstAttitudeUnder(law, conditions, pull) : wanted.attitude;
  if (!(angle >= 0 && angle <= 180)) throw new OutOfRangeError("attitude", angle, "0 to 180°");
  return leastMarginUnder(law, conditions, pull, sineOfDegrees(angle), cosineOfDegrees(angle));
}

/** @returns whether two builds pull alike because nothing that makes the pull differs: the same parts, the same jet and pull factor */
function pullsAlike(one: AnyPredictInput, other: AnyPredictInput): boolean {
  const parts = ["air", "rotor", "motor", "pack", "supply", "skirt"] as const;
  const [a, b]: Partial<PredictInput>[] = [one as PredictInput, other as PredictInput];
  const pulling = ["jetArea", "jetAngle", "pullFactor"] as const;
  const alike = pulling.every((name) => a.vehicle?.[name] === b.vehicle?.[name]);
  return alike && parts.every((part) => a[part] === b[part]);
}

/**
 * Pull of a build's variants; the build's own is worked out once and kept for variants that differ in the vehicle alone.
 *
 *     as {@link pulled}
 *
 * @param base - the build as it stands, all SI [-]
 * @returns function from a variant, which shares the unchanged parts, to its pull [N]
 * @throws {OutOfRangeError} as {@link pulled}
 *
 * Valid and source: as {@link pulled}
 */
export function pullOfVariants(base: AnyPredictInput): (variant: AnyPredictInput) => Pulled {
  const own = pulled(base);
  return (variant) => (pullsAlike(base, variant) ? own : pulled(variant));
}
