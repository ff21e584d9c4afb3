import type { Air } from "./air.ts";
import { propellerReynolds, propellerUnits } from "./fanlaws/propeller.ts";

/** An open propeller that presses the vehicle on: coefficients at a reference Reynolds number and per ln Re. */
export interface PropellerInput {
  readonly kind: "propeller";
  /** [m] */
  readonly diameter: number;
  /** C_T at the reference, and per ln(Re/Re_ref) */
  readonly thrust: readonly [number, number];
  /** C_P likewise */
  readonly power: readonly [number, number];
  readonly referenceReynolds: number;
  /** at 75 % of the radius [m] */
  readonly chord: number;
  /** least and greatest Reynolds number that the coefficients were measured at; beyond them the point is marked extrapolated [-] */
  readonly testedReynolds?: readonly [number, number];
}

type BladeAir = Pick<Air, "density" | "viscosity">;
type Blade = Pick<PropellerInput, "diameter" | "chord">;

/** Rounding of a Reynolds number at the end of the tested range [-]. */
const RANGE_SLACK = 1e-9;

/** @returns Re of the blade at 75 % of the radius, at a speed [rad/s], > 0 */
export function bladeReynolds({ diameter, chord }: Blade, air: BladeAir, speed: number): number {
  return propellerReynolds({ diameter, speed, density: air.density }, chord, air.viscosity);
}

/** @returns least and greatest speed at whose Reynolds number the propeller was tested [rad/s]; any where nothing says */
export function testedSpeeds(rotor: PropellerInput, air: BladeAir): readonly [number, number] {
  if (!rotor.testedReynolds) return [0, Number.POSITIVE_INFINITY];
  const [least, most] = rotor.testedReynolds;
  const each = bladeReynolds(rotor, air, 1);
  return [(least * (1 - RANGE_SLACK)) / each, (most * (1 + RANGE_SLACK)) / each];
}

/** @returns whether the propeller was tested at no such Reynolds number, at a speed [rad/s], > 0 */
export function isBeyondTested(rotor: PropellerInput, air: BladeAir, speed: number): boolean {
  const [least, most] = testedSpeeds(rotor, air);
  return speed < least || speed > most;
}

/**
 * Thrust and shaft power of a propeller at one speed.
 *
 *     T = ρn²D⁴·[C_T + c_T ln(Re/Re_ref)],  P = ρn³D⁵·[C_P + c_P ln(Re/Re_ref)]
 *
 * @param rotor - coefficients [-], diameter and chord [m]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param speed - ω [rad/s], > 0
 * @returns thrust [N] and shaft power [W]
 * @throws {OutOfRangeError} on a size, chord or speed that is not above 0
 *
 * Valid standing still, away from the surface. Source: docs/method/fits/propeller.md
 */
export function thrustAndPower(
  rotor: PropellerInput,
  air: Air,
  speed: number,
): { readonly thrust: number; readonly power: number } {
  const unit = propellerUnits({ diameter: rotor.diameter, speed, density: air.density });
  const drift = Math.log(bladeReynolds(rotor, air, speed) / rotor.referenceReynolds);
  return {
    thrust: unit.thrust * (rotor.thrust[0] + rotor.thrust[1] * drift),
    power: unit.power * (rotor.power[0] + rotor.power[1] * drift),
  };
}

/** Thrust at one speed of a drawn curve. */
export interface ThrustCurvePoint {
  /** [rad/s] */
  readonly speed: number;
  /** [N] */
  readonly thrust: number;
  readonly extrapolated: boolean;
}

/**
 * A propeller's thrust from standstill to a speed, for drawing.
 *
 *     T(ω) by {@link thrustAndPower} at evenly spaced speeds
 *
 * @param rotor - coefficients [-], diameter and chord [m]
 * @param air - density [kg/m³], viscosity [Pa·s]
 * @param most - the last speed [rad/s], > 0
 * @param count - points after the first one at rest
 * @returns points by rising speed [rad/s, N]
 * @throws as {@link thrustAndPower}
 *
 * Valid and source: as {@link thrustAndPower}
 */
export function thrustCurve(
  rotor: PropellerInput,
  air: Air,
  most: number,
  count: number,
): readonly ThrustCurvePoint[] {
  const turning = Array.from({ length: count }, (_, i): ThrustCurvePoint => {
    const speed = (most * (i + 1)) / count;
    const { thrust } = thrustAndPower(rotor, air, speed);
    return { speed, thrust, extrapolated: isBeyondTested(rotor, air, speed) };
  });
  return [{ speed: 0, thrust: 0, extrapolated: rotor.testedReynolds !== undefined }, ...turning];
}
