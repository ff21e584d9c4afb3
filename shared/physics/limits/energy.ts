import { requireNonNegative } from "../../numeric/errors.ts";
import { STANDARD_GRAVITY } from "../constants.ts";

/**
 * Energy of a piece that flies off a turning rotor.
 *
 *     E = ½·m·(ω·r)²
 *
 * @param mass - of the piece [kg], ≥ 0
 * @param radius - of its centre of gravity [m], ≥ 0
 * @param speed - ω [rad/s], ≥ 0
 * @returns E [J], its flight alone; its spin is left out
 * @throws {OutOfRangeError} on a negative or non-finite number
 *
 * Valid for a piece small against the radius. Source: kinetic energy
 */
export function fragmentEnergy(mass: number, radius: number, speed: number): number {
  const flight = requireNonNegative("speed", speed) * requireNonNegative("radius", radius);
  return 0.5 * requireNonNegative("mass", mass) * flight ** 2;
}

/**
 * Energy of a vehicle that falls from a height.
 *
 *     E = m·g·h
 *
 * @param mass - of the vehicle [kg], ≥ 0
 * @param height - h of the fall [m], ≥ 0
 * @returns E [J] on landing
 * @throws {OutOfRangeError} on a negative or non-finite number
 *
 * Valid without the drag of the air, which only helps. Source: potential energy
 */
export function fallingEnergy(mass: number, height: number): number {
  return requireNonNegative("mass", mass) * STANDARD_GRAVITY * requireNonNegative("height", height);
}

/**
 * Speed of a vehicle that fell from a height.
 *
 *     v = √(2·g·h)
 *
 * @param height - h of the fall [m], ≥ 0
 * @returns v [m/s] on landing
 * @throws {OutOfRangeError} on a negative or non-finite height
 *
 * Valid without the drag of the air. Source: conservation of energy
 */
export function fallingSpeed(height: number): number {
  return Math.sqrt(2 * STANDARD_GRAVITY * requireNonNegative("height", height));
}

/**
 * Energy that a turning rotor holds.
 *
 *     E = ½·J·ω²,  J = ½·m·(r_o² + r_i²)
 *
 * @param rotor - mass with its blades [kg], radius and bore's radius [m]
 * @param speed - ω [rad/s], ≥ 0
 * @returns E [J]
 * @throws {OutOfRangeError} on a negative or non-finite number
 *
 * Valid for a rotor whose mass lies evenly over its disc; with heavy blades at the rim up to twice as much. Source: moment of inertia of a ring
 */
export function rotorEnergy(
  rotor: { readonly mass: number; readonly outerRadius: number; readonly boreRadius: number },
  speed: number,
): number {
  const { mass, outerRadius, boreRadius } = rotor;
  const squares =
    requireNonNegative("rotor.outerRadius", outerRadius) ** 2 +
    requireNonNegative("rotor.boreRadius", boreRadius) ** 2;
  const inertia = 0.5 * requireNonNegative("rotor.mass", mass) * squares;
  return 0.5 * inertia * requireNonNegative("speed", speed) ** 2;
}
