import { requireNonNegative, requirePositive } from "../numeric/errors.ts";

/** Part of a motor's mass that turns, as a ring at its rim: the bell of an outrunner. Common practice, no source; within a factor of 2. */
const BELL = 0.3;

/**
 * Inertia of a rotor as an even disc with a bore.
 *
 *     J = ½m(r_o² + r_i²)
 *
 * @param mass - m [kg], ≥ 0
 * @param diameter - 2·r_o [m], > 0
 * @param bore - 2·r_i [m], 0 up to the diameter
 * @returns J [kg·m²]
 * @throws {OutOfRangeError} on a mass below 0, a diameter that is not above 0
 *
 * Valid for mass spread evenly over the disc; a hub that is heavier than its blades has less. Source: mechanics; docs/method/power-cut.md
 */
export function discInertia(mass: number, diameter: number, bore = 0): number {
  requireNonNegative("rotor.mass", mass);
  requirePositive("rotor.diameter", diameter);
  return (mass * (diameter ** 2 + bore ** 2)) / 8;
}

/**
 * Inertia of a motor's turning part, estimated.
 *
 *     J = 0.3·m·(D/2)²
 *
 * @param mass - of the whole motor [kg], ≥ 0
 * @param diameter - of its can [m], > 0
 * @returns J [kg·m²]
 * @throws {OutOfRangeError} on a mass below 0, a diameter that is not above 0
 *
 * Valid within a factor of 2 for motors whose bell turns; less where only the core does. Source: common practice, no source
 */
export function bellInertia(mass: number, diameter: number): number {
  requireNonNegative("motor.mass", mass);
  requirePositive("motor.diameter", diameter);
  return BELL * mass * (diameter / 2) ** 2;
}
