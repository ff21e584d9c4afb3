import { OutOfRangeError, requirePositive } from "../../numeric/errors.ts";
import type { VehicleInput } from "../../physics/assembly.ts";
import { requiredSuction } from "../../physics/hold/holdAt.ts";
import { CONDITION_COUNT, CONDITIONS, compileHold, NUMBERS_PER_CONDITION } from "../../physics/hold/law.ts";
import { rigidPull } from "../../physics/hold/pull.ts";
import { worstAttitude } from "../../physics/hold/worst.ts";
import { wantedMargin } from "../wanted.ts";
import type { Need, WantedHold } from "./input.ts";

/** Suction by which the worst attitude is told where more of it hurts some condition: about that of its weight [N]. */
const aboutWeight = (vehicle: VehicleInput): number =>
  compileHold(vehicle)[CONDITIONS.liftOff[0] * NUMBERS_PER_CONDITION + 1];

/** A margin this near to the wanted one is met; further off, some condition is hurt by suction [-]. */
const MET = 1e-9;

/** θ that a wanted hold is about [°]. */
function angleOf(vehicle: VehicleInput, { angle, mode }: WantedHold): number {
  if (angle !== "worst") return angle;
  const conditions = mode === "parked" ? CONDITIONS.tip[1] : CONDITION_COUNT;
  return worstAttitude(compileHold(vehicle), conditions, aboutWeight(vehicle));
}

/**
 * Pull that gives a margin on an attitude, the gap as set.
 *
 *     F = margin·F_required(θ)
 *
 * @param vehicle - every field in SI units [-]
 * @param hold - θ [°] or the worst, margin [-], parked or driving
 * @returns F [N]
 * @throws {OutOfRangeError} where nothing is needed there, where no pull suffices, on a margin that is not above 0
 *
 * Valid for a rigid vehicle. Source: docs/method/size.md
 */
export function pullForHold(vehicle: VehicleInput, hold: WantedHold): number {
  const margin = requirePositive("hold.margin", hold.margin);
  const angle = angleOf(vehicle, hold);
  const required = requiredSuction(vehicle, angle)[hold.mode];
  if (required === 0)
    throw new OutOfRangeError(
      "hold.angle",
      angle,
      "an attitude that needs pull; this vehicle stays there by its weight alone. Ask for a steeper one, or for a pull",
    );
  const pull = margin * required;
  const met = wantedMargin(vehicle, rigidPull(pull), { attitude: hold.angle, mode: hold.mode });
  if (!(Math.abs(met / margin - 1) < MET))
    throw new OutOfRangeError(
      "hold.angle",
      angle,
      "an attitude that some pull holds; on this one more pull brakes more than it grips. Give the wheels more friction, or the skirt less of the load",
    );
  return pull;
}

/** @returns the pull that is asked for with the gap as set [N] @throws {OutOfRangeError} as {@link pullForHold} */
export function pullOfNeed(vehicle: VehicleInput, need: Need): number {
  return "pull" in need ? requirePositive("pull", need.pull) : pullForHold(vehicle, need.hold);
}
