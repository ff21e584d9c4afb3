import { requirePositive } from "../../numeric/errors.ts";

/** What a fan is by its duty alone, whatever its size and speed. */
export interface SpecificNumbers {
  /** N_s [-] */
  readonly speed: number;
  /** D_s [-] */
  readonly diameter: number;
}

/**
 * Specific speed and specific diameter of a rotor at one place of its curve.
 *
 *     N_s = ω·√Q/(Δp/ρ)^¾,  D_s = D·(Δp/ρ)^¼/√Q;  of φ and ψ: N_s·D_s = √(8/ψ), N_s·D_s³ = 8/(πφ)
 *
 * @param phi - φ [-], > 0
 * @param psi - ψ [-], > 0
 * @returns N_s and D_s [-]
 * @throws {OutOfRangeError} on a φ or ψ that is not above 0
 *
 * Valid for incompressible flow. Δp is the suction that the cavity has; a published fan counts its total pressure, which is more. Source: definitions, with ω in rad/s
 */
export function specificNumbers(phi: number, psi: number): SpecificNumbers {
  const product = Math.sqrt(8 / requirePositive("psi", psi));
  const square = 8 / (Math.PI * requirePositive("phi", phi)) / product;
  const diameter = Math.sqrt(square);
  return { speed: product / diameter, diameter };
}
