import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { cosineOfDegrees } from "../hold/angle.ts";

/** A blade that stands on its disc, free at its other end. */
export interface StandingBlade {
  /** L, from the disc to its free end, along the shaft [m] */
  readonly height: number;
  /** t [m] */
  readonly thickness: number;
  /** r_b, of its middle [m] */
  readonly radius: number;
  /** β between the blade and the tangent: 90 radial; the exit angle of the geometry [°] */
  readonly angle: number;
  /** ρ_m [kg/m³] */
  readonly density: number;
}

/**
 * Bending stress at the root of a blade that stands on its disc, by its own centrifugal force.
 *
 *     σ = M/W = ½q·L²/(c·t²/6) with q = ρ_m·c·t·ω²·r_b·cos β  →  3·ρ_m·ω²·r_b·cos β·L²/t
 *
 * @param blade - height, thickness, radius [m], angle [°], density [kg/m³]
 * @param speed - ω [rad/s], ≥ 0
 * @returns σ at the root [Pa]; 0 for a radial blade, which stands on edge
 * @throws {OutOfRangeError} on a blade that can't be
 *
 * Valid for a flat blade without a shroud, of even thickness, its load at its middle's radius; a shroud takes most of it off. A fillet at the root takes the notch off, which isn't counted.
 * Source: cantilever under an even load, M = ½qL², and section modulus ct²/6 (Timoshenko, Strength of Materials, part I); docs/method/limits.md
 */
export function bladeBending(blade: StandingBlade, speed: number): number {
  const { height, thickness, radius, angle, density } = blade;
  requirePositive("rotor.bladeHeight", height);
  requirePositive("rotor.bladeThickness", thickness);
  requirePositive("rotor.bladeRadius", radius);
  requirePositive("rotor.density", density);
  if (!(angle >= 0 && angle <= 90)) throw new OutOfRangeError("rotor.bladeAngle", angle, "0 to 90°");
  const turning = requireNonNegative("speed", speed) ** 2 * radius;
  return (3 * density * turning * cosineOfDegrees(angle) * height ** 2) / thickness;
}
