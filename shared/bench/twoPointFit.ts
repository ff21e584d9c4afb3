import { NotEnoughDataError } from "../numeric/errors.ts";
import { twoPointCurve } from "../physics/fanlaws/coefficients.ts";
import type { CurveFit } from "./curveFit.ts";
import type { RotorPoint } from "./rotorPoints.ts";

/**
 * Curve of a rotor of which only two flows are known, as a rule blocked and open.
 *
 *     ψ = ψ₀(1 − (φ/φ_free)²) through the weighted means of the two groups of readings
 *
 * @param points - φ, ψ, weight, at two flows; repeats of one flow lie within 1 % of the largest [-]
 * @returns the curve as a fit without residuals [-]
 * @throws {NotEnoughDataError} where the pressure doesn't fall from the smaller flow to the larger
 *
 * Valid as a first guess; where neither reading is blocked ψ₀ is extrapolated. Source: {@link twoPointCurve}
 */
export function fitTwoPoint(points: readonly RotorPoint[]): CurveFit & { readonly twoPoint: true } {
  const phis = points.map((point) => point.phi);
  const between = (Math.min(...phis) + Math.max(...phis)) / 2;
  const near = meanPoint(points.filter((point) => point.phi < between));
  const far = meanPoint(points.filter((point) => point.phi >= between));
  const fall = (near.psi - far.psi) / (far.square - near.square);
  const psi0 = near.psi + fall * near.square;
  if (!(fall > 0 && psi0 > 0))
    throw new NotEnoughDataError(
      "Two flows are known, and the pressure doesn't fall from one to the other.",
      "Take readings at more flows, from blocked to fully open.",
      "points",
    );
  return {
    coefficients: twoPointCurve(psi0, Math.sqrt(psi0 / fall)),
    covariance: [],
    degree: 2,
    reason: "two flows only: the parabola ψ₀(1 − (φ/φ_free)²) through them",
    residualSd: 0,
    rSquared: 1,
    aicc: null,
    leaveOneOutSd: null,
    outliers: [],
    dof: 0,
    twoPoint: true,
  };
}

function meanPoint(points: readonly RotorPoint[]): { psi: number; square: number } {
  let weight = 0;
  let psi = 0;
  let square = 0;
  for (const point of points) {
    weight += point.weight;
    psi += point.weight * point.psi;
    square += point.weight * point.phi ** 2;
  }
  return { psi: psi / weight, square: square / weight };
}
