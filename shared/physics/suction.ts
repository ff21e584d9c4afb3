import { requireFinite, requireNonNegative, requirePositive } from "../numeric/errors.ts";
import { cosineOfDegrees } from "./hold/angle.ts";

export interface SuctionInput {
  /** A_inside, within the lip's inner edge [m²] */
  readonly area: number;
  /** P of the lip [m] */
  readonly perimeter: number;
  /** ℓ of the lip [m] */
  readonly land: number;
  /** Δp of the cavity [Pa] */
  readonly pressure: number;
  /** κ: what pulls measure over what the model says of the cavity [-] */
  readonly pullFactor: number;
  /** σ_l from {@link landShare} [-] */
  readonly landShare: number;
  /** Q through the rotor [m³/s] */
  readonly flow: number;
  /** of the air [kg/m³] */
  readonly density: number;
  /** A_out of an exhaust that leaves away from the surface; null: no thrust counted [m²] */
  readonly jetArea: number | null;
  /** α between the jet and the surface's normal [°] */
  readonly jetAngleDegrees: number;
}

/** A straight fall of pressure from the cavity's to none, over the whole land: half of it on average. */
const STRAIGHT_FALL = 0.5;

/**
 * Mean share of the cavity's suction that acts under the lip's land.
 *
 *     σ_l = 1 − ½·Δp_friction/Δp;  of a measured leak Q = C_L·Δp^x that is 1/(2x);  ½ for a sealed lip
 *
 * @param pressure - Δp of the cavity [Pa], ≥ 0
 * @param frictionPressure - friction part of Δp along the land [Pa], 0…Δp; null for a sealed lip
 * @returns σ_l [-]
 * @throws {OutOfRangeError} on a negative or non-finite pressure
 *
 * Valid for a suction that grows along the straight line from the inlet's to the cavity's. Source: docs/method/holding.md
 */
export function landShare(pressure: number, frictionPressure: number | null): number {
  requireNonNegative("pressure", pressure);
  if (frictionPressure === null || pressure === 0) return STRAIGHT_FALL;
  return 1 - (STRAIGHT_FALL * requireNonNegative("frictionPressure", frictionPressure)) / pressure;
}

/**
 * Force that presses the vehicle onto the surface.
 *
 *     F_s = κ·Δp·(A_inside + σ_l·P·ℓ) + F_jet,  F_jet = ρ·Q²/A_out·cos α
 *
 * @param input - areas [m²], perimeter and land [m], pressure [Pa], pull factor and share [-], flow [m³/s], density [kg/m³], jet angle [°]
 * @returns F_s [N]
 * @throws {OutOfRangeError} on a negative or non-finite number, a pull factor, jet area or density that is not above 0
 *
 * Valid for a cavity at one pressure. A jet towards the surface (α > 90°) pushes the vehicle off. Source: pressure times area; momentum of the jet
 */
export function suctionForce(input: SuctionInput): number {
  const area = requireNonNegative("skirt.area", input.area);
  const lip =
    requireNonNegative("skirt.perimeter", input.perimeter) * requireNonNegative("skirt.land", input.land);
  const share = requireNonNegative("landShare", input.landShare);
  const factor = requirePositive("vehicle.pullFactor", input.pullFactor);
  return factor * requireNonNegative("pressure", input.pressure) * (area + share * lip) + jetForce(input);
}

function jetForce(input: SuctionInput): number {
  if (input.jetArea === null) return 0;
  requirePositive("vehicle.jetArea", input.jetArea);
  requirePositive("air.density", input.density);
  requireNonNegative("flow", input.flow);
  requireFinite("vehicle.jetAngle", input.jetAngleDegrees);
  return ((input.density * input.flow ** 2) / input.jetArea) * cosineOfDegrees(input.jetAngleDegrees);
}
