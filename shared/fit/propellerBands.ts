import { studentQuantile } from "../numeric/student.ts";
import type { PropellerFit } from "./propellerFit.ts";
import type { Band } from "./rotorBands.ts";

/**
 * A fitted propeller coefficient at one Reynolds number, and how well it is known.
 *
 *     C = C₀ + c·x ± t·√(Var C₀ + 2x·Cov + x²·Var c),  x = ln(Re/Re_ref), t Student's
 *
 * @param fit - lines, covariances, degrees of freedom [-]
 * @param which - C_T or C_P
 * @param reynolds - Re [-]
 * @param confidence - share of the band, 0.95 unless given [-]
 * @returns C and its band, null where no residual is left over [-]; null without shaft power
 * @throws {OutOfRangeError} on a confidence that is not between 0 and 1
 *
 * Valid between the least and the greatest Re tested. Source: Draper & Smith, Applied Regression Analysis, 3rd ed., section 3.1
 */
export function propellerBand(
  fit: Pick<PropellerFit, "thrust" | "power" | "covariance" | "dof" | "referenceReynolds">,
  which: "thrust" | "power",
  reynolds: number,
  confidence = 0.95,
): { readonly value: number; readonly band: Band | null } | null {
  const line = fit[which];
  if (!line) return null;
  const x = Math.log(reynolds / fit.referenceReynolds);
  const value = line[0] + line[1] * x;
  const covariance = fit.covariance[which];
  const dof = fit.dof[which];
  if (!covariance || dof === null || !(dof > 0)) return { value, band: null };
  const [[level, both], [, drift]] = covariance;
  const half =
    studentQuantile((1 + confidence) / 2, dof) *
    Math.sqrt(Math.max(0, level + 2 * x * both + x ** 2 * drift));
  return { value, band: { low: value - half, high: value + half } };
}

/**
 * How far a coefficient drifts between the least and the greatest Reynolds number tested.
 *
 *     (C(Re_max) − C(Re_min))/C₀ = c·ln(Re_max/Re_min)/C₀
 *
 * @param fit - lines and tested range [-]
 * @param which - C_T or C_P
 * @returns share of the coefficient at the reference [-]; 0 where no drift was kept, null without shaft power
 *
 * Valid as the fit. Source: the fitted line
 */
export function driftOverRange(
  fit: Pick<PropellerFit, "thrust" | "power" | "testedReynolds">,
  which: "thrust" | "power",
): number | null {
  const line = fit[which];
  if (!line || line[0] === 0) return null;
  const [least, most] = fit.testedReynolds;
  return (line[1] * Math.log(most / least)) / line[0];
}
