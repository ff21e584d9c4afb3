import { requireFinite, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { RotorState } from "./coefficients.ts";

export interface PropellerReading {
  /** T, towards the surface [N] */
  readonly thrust: number;
  /** P; null where no torque was measured [W] */
  readonly shaftPower: number | null;
}

export interface PropellerCoefficients {
  /** C_T [-] */
  readonly thrust: number;
  /** C_P; null without shaft power [-] */
  readonly power: number | null;
}

/** Radius at which a propeller's chord and speed are taken, over its tip radius [-]. Common practice, no source. */
const REFERENCE_RADIUS = 0.75;

/**
 * Coefficients of an open propeller standing still in the air.
 *
 *     C_T = T/(ρn²D⁴),  C_P = P/(ρn³D⁵),  n in 1/s
 *
 * @param reading - thrust [N], shaft power or null [W]
 * @param state - diameter [m], speed [rad/s], density [kg/m³], all > 0
 * @returns C_T, C_P [-]
 * @throws {OutOfRangeError} on a state that is not above 0, a thrust that is not finite, a negative shaft power
 *
 * Valid for incompressible flow. Source: definitions of propeller theory (Glauert 1935, from memory)
 */
export function propellerCoefficients(reading: PropellerReading, state: RotorState): PropellerCoefficients {
  const unit = propellerUnits(state);
  return {
    thrust: requireFinite("thrust", reading.thrust) / unit.thrust,
    power:
      reading.shaftPower === null ? null : requireNonNegative("shaftPower", reading.shaftPower) / unit.power,
  };
}

/**
 * Thrust and power of a propeller whose coefficients are 1.
 *
 *     ρn²D⁴ and ρn³D⁵,  n = ω/2π
 *
 * @param state - diameter [m], speed [rad/s], density [kg/m³], all > 0
 * @returns thrust [N] and power [W]
 * @throws {OutOfRangeError} on a state that is not above 0
 *
 * Valid and source: as {@link propellerCoefficients}
 */
export function propellerUnits(state: RotorState): { readonly thrust: number; readonly power: number } {
  const diameter = requirePositive("rotor.diameter", state.diameter);
  const density = requirePositive("air.density", state.density);
  const n = requirePositive("speed", state.speed) / (2 * Math.PI);
  const thrust = density * n ** 2 * diameter ** 4;
  return { thrust, power: thrust * n * diameter };
}

/**
 * Reynolds number of a propeller's blade.
 *
 *     Re = ρ·(0.75·ωD/2)·c/μ
 *
 * @param state - diameter [m], speed [rad/s], density [kg/m³], all > 0
 * @param chord - c at 75 % of the radius [m], > 0
 * @param viscosity - μ [Pa·s], > 0
 * @returns Re [-]
 * @throws {OutOfRangeError} on a number that is not finite and above 0
 *
 * Valid standing still. Source: common practice, no source, for the radius
 */
export function propellerReynolds(state: RotorState, chord: number, viscosity: number): number {
  const tip = (requirePositive("speed", state.speed) * requirePositive("rotor.diameter", state.diameter)) / 2;
  const density = requirePositive("air.density", state.density);
  return (
    (density * REFERENCE_RADIUS * tip * requirePositive("rotor.chord", chord)) /
    requirePositive("air.viscosity", viscosity)
  );
}
