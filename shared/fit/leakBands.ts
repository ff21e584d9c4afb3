import { studentQuantile } from "../numeric/student.ts";
import { type Information, varianceAt } from "./information.ts";
import type { LeakFit } from "./leakFit.ts";
import type { Band } from "./rotorBands.ts";

export interface LeakBands {
  /** of the law [m³/s] */
  readonly flow: number;
  /** where the law itself lies [m³/s] */
  readonly mean: Band;
  /** where another reading would lie [m³/s] */
  readonly prediction: Band;
  /** whether the pressure lies beyond the readings: the bands then say too little */
  readonly extrapolated: boolean;
}

/** @returns (1, ln Δp): how ln Q leans on ln C_L and x */
export const leakRow = (pressure: number): number[] => [1, Math.log(pressure)];

type Judged = Pick<
  LeakFit,
  "coefficient" | "exponent" | "covariance" | "residualSd" | "dof" | "pressureRange"
>;

/** @returns (XᵀWX)⁻¹ of (ln C_L, x), per variance of the flow; null where the readings leave no residual */
export function leakInformation(fit: Pick<LeakFit, "covariance" | "residualSd">): Information | null {
  const { covariance, residualSd } = fit;
  return covariance && residualSd > 0
    ? covariance.map((row) => row.map((value) => value / residualSd ** 2))
    : null;
}

/**
 * Bands of a fitted leak at one pressure, in the logarithm of the flow.
 *
 *     ln Q ± t·√(xᵀCx), x = (1, ln Δp);  prediction: ln Q ± t·√(xᵀCx + (s/Q)²)
 *
 * @param fit - C_L [m³/(s·Pa^x)], x [-], covariance of (ln C_L, x) [-], residual sd [m³/s], degrees of freedom [-], range [Pa]
 * @param pressure - Δp, above 0 [Pa]
 * @param confidence - share of each band, 0.95 unless given [-]
 * @returns flow and both bands [m³/s]; null where the readings left no residual
 * @throws {OutOfRangeError} on a confidence that is not between 0 and 1
 *
 * Valid between the smallest and the largest pressure, one at a time, where the scatter is small against the flow. An x held at a bound counts as known.
 * Source: Draper & Smith, Applied Regression Analysis, 3rd ed., sections 3.1 and 24.2 (linearised at the answer)
 */
export function leakBands(fit: Judged, pressure: number, confidence = 0.95): LeakBands | null {
  if (!fit.covariance || !(fit.dof > 0)) return null;
  const t = studentQuantile((1 + confidence) / 2, fit.dof);
  const flow = fit.coefficient * pressure ** fit.exponent;
  const variance = varianceAt(fit.covariance, leakRow(pressure));
  const around = (square: number): Band => {
    const ratio = Math.exp(t * Math.sqrt(square));
    return { low: flow / ratio, high: flow * ratio };
  };
  return {
    flow,
    mean: around(variance),
    prediction: around(variance + (fit.residualSd / flow) ** 2),
    extrapolated: pressure < fit.pressureRange[0] || pressure > fit.pressureRange[1],
  };
}
