import { evaluatePolynomial } from "../numeric/polynomial.ts";
import { studentQuantile } from "../numeric/student.ts";
import type { RotorFit } from "./rotorFit.ts";

export interface Band {
  readonly low: number;
  readonly high: number;
}

export interface RotorBands {
  /** ψ of the curve [-] */
  readonly psi: number;
  /** where the curve itself lies [-] */
  readonly mean: Band;
  /** where another reading of weight 1 would lie [-] */
  readonly prediction: Band;
  /** whether φ lies beyond the readings: the bands then say too little */
  readonly extrapolated: boolean;
}

/**
 * Uncertainty of a fitted rotor curve at one flow.
 *
 *     mean: ψ ± t·√(xᵀCx);  prediction: ψ ± t·√(xᵀCx + s²);  x = (1, φ, φ², …), t Student's with the fit's degrees of freedom
 *
 * @param fit - ψ, its covariance, residual sd and degrees of freedom, range [-]
 * @param phi - φ [-]
 * @param confidence - share of each band, 0.95 unless given [-]
 * @returns ψ and both bands [-]; null where the points left no residual
 * @throws {OutOfRangeError} on a confidence that is not between 0 and 1
 *
 * Valid between phiMin and phiMax, one φ at a time. Source: Draper & Smith, Applied Regression Analysis, 3rd ed., section 3.1
 */
export function rotorBands(
  fit: Pick<RotorFit, "psi" | "covariance" | "residualSd" | "dof" | "phiMin" | "phiMax">,
  phi: number,
  confidence = 0.95,
): RotorBands | null {
  if (!(fit.dof > 0)) return null;
  const t = studentQuantile((1 + confidence) / 2, fit.dof);
  const psi = evaluatePolynomial(fit.psi, phi);
  const variance = fit.covariance.reduce(
    (sum, row, i) => sum + row.reduce((part, c, j) => part + c * phi ** (i + j), 0),
    0,
  );
  const around = (square: number): Band => {
    const half = t * Math.sqrt(Math.max(0, square));
    return { low: psi - half, high: psi + half };
  };
  return {
    psi,
    mean: around(variance),
    prediction: around(variance + fit.residualSd ** 2),
    extrapolated: phi < fit.phiMin || phi > fit.phiMax,
  };
}
