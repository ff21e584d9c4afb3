import { OutOfRangeError, requirePositive } from "../../numeric/errors.ts";

/** A centrifugal rotor of which only the drawing is known. */
export interface RotorGeometry {
  /** D over the blade tips [m] */
  readonly diameter: number;
  /** b₂ of the channel at the tips [m] */
  readonly exitWidth: number;
  /** β₂ between blade and tangent at the tips, 90° radial, less: swept back [°] */
  readonly bladeAngleDegrees: number;
  /** Z [-] */
  readonly blades: number;
  /** η_h, 0.6 unless given [-] */
  readonly hydraulicEfficiency?: number;
}

export interface EstimatedRotor {
  /** ψ in ascending powers of φ [-] */
  readonly psi: readonly [number, number, number];
  /** λ in ascending powers of φ [-] */
  readonly lambda: readonly [number, number, number];
  /** relative, of ψ and λ [-] */
  readonly uncertainty: number;
  readonly estimated: true;
}

/** Share of the Euler work that becomes pressure in small printed rotors [-]. Common practice, no source. */
export const HYDRAULIC_EFFICIENCY = 0.6;
/** Relative uncertainty of an estimate from the drawing alone [-]. Judgement, no source. */
export const ESTIMATE_UNCERTAINTY = 0.3;
const WIESNER_POWER = 0.7;

/**
 * Slip factor: the share of the blade speed that the air leaves a swept rotor with.
 *
 *     σ = 1 − √(sin β₂)/Z^0.7
 *
 * @param bladeAngleDegrees - β₂ between blade and tangent [°], 0 < β₂ ≤ 90
 * @param blades - Z, a whole number from 2 up [-]
 * @returns σ [-]
 * @throws {OutOfRangeError} on an angle or a number of blades out of its range
 *
 * Valid while the blades begin far enough inside: D₁/D₂ < exp(−8.16 sin β₂/Z). Source: Wiesner, J. Eng. Power 89 (1967) 558–566 (from memory)
 */
export function wiesnerSlip(bladeAngleDegrees: number, blades: number): number {
  const sine = Math.sin(checkedAngle(bladeAngleDegrees));
  if (!(Number.isInteger(blades) && blades >= 2))
    throw new OutOfRangeError("rotor.blades", blades, "a whole number, 2 or more");
  return 1 - Math.sqrt(sine) / blades ** WIESNER_POWER;
}

/**
 * Euler work of a rotor without swirl at its inlet, as a pressure coefficient.
 *
 *     ψ_E = 2·c_u2/u = 2·(σ − (c_m2/u)·cot β₂)
 *
 * @param slip - σ; 1 for blades without number [-]
 * @param throughflow - c_m2/u, radial velocity at the tips over tip speed [-]
 * @param bladeAngleDegrees - β₂ between blade and tangent [°], 0 < β₂ ≤ 90
 * @returns ψ_E [-]
 * @throws {OutOfRangeError} on an angle out of its range
 *
 * Valid for any incompressible turbomachine. Source: Euler's turbine equation
 */
export function eulerCoefficient(slip: number, throughflow: number, bladeAngleDegrees: number): number {
  return 2 * (slip - throughflow / Math.tan(checkedAngle(bladeAngleDegrees)));
}

/**
 * Curve of a rotor that was never tested, from its drawing: an estimate, ±30 %.
 *
 *     ψ = η_h·ψ_E − (c_m2/u)²,  λ = φ·ψ_E,  ψ_E = 2[σ − (c_m2/u) cot β₂],  c_m2/u = φ·D/(4·b₂)
 *
 * @param geometry - diameter and exit width [m], blade angle [°], blades [-], hydraulic efficiency [-]
 * @returns coefficients of ψ and λ in ascending powers of φ [-], their relative uncertainty [-]
 * @throws {OutOfRangeError} on a geometry that can't be
 *
 * Valid for radial and swept-back blades. The velocity head of the through-flow counts as lost; disc friction is left out.
 * Source: Euler's turbine equation; Wiesner (1967); η_h is common practice, no source
 */
export function estimatedRotor(geometry: RotorGeometry): EstimatedRotor {
  const { bladeAngleDegrees, hydraulicEfficiency = HYDRAULIC_EFFICIENCY } = geometry;
  if (!(hydraulicEfficiency > 0 && hydraulicEfficiency <= 1))
    throw new OutOfRangeError("rotor.hydraulicEfficiency", hydraulicEfficiency, "above 0, up to 1");
  const diameter = requirePositive("rotor.diameter", geometry.diameter);
  const throughflow = diameter / (4 * requirePositive("rotor.exitWidth", geometry.exitWidth));
  const slip = wiesnerSlip(bladeAngleDegrees, geometry.blades);
  const atRest = eulerCoefficient(slip, 0, bladeAngleDegrees);
  const fall = eulerCoefficient(slip, throughflow, bladeAngleDegrees) - atRest;
  return {
    psi: [hydraulicEfficiency * atRest, hydraulicEfficiency * fall, -(throughflow ** 2)],
    lambda: [0, atRest, fall],
    uncertainty: ESTIMATE_UNCERTAINTY,
    estimated: true,
  };
}

function checkedAngle(degrees: number): number {
  if (!(degrees > 0 && degrees <= 90))
    throw new OutOfRangeError("rotor.bladeAngle", degrees, "above 0, up to 90 degrees");
  return (degrees * Math.PI) / 180;
}
