import { NotEnoughDataError } from "../numeric/errors.ts";
import { fitLinear } from "../numeric/leastSquares.ts";
import { twoPointCurve } from "../physics/fanlaws/coefficients.ts";
import type { CurveFit } from "./curveFit.ts";
import type { RotorPoint } from "./rotorPoints.ts";

/** Relative standard uncertainty of a curve whose readings can't show it: two flows alone, or no residual left [-]. Common practice, no source. */
export const UNSHOWN = 0.3;

/**
 * Curve of a rotor of which only two flows are known, as a rule blocked and open.
 *
 *     ψ = ψ₀(1 − (φ/φ_free)²) by weighted least squares in ψ₀ and ψ₀/φ_free²
 *
 * @param points - φ, ψ, weight, at two flows; repeats of one flow lie within 1 % of the largest [-]
 * @returns the curve as a fit; without repeats it leaves no residual [-]
 * @throws {NotEnoughDataError} where the pressure doesn't fall from the smaller flow to the larger
 *
 * Valid as a first guess; where neither reading is blocked ψ₀ is extrapolated. Source: {@link twoPointCurve}
 */
export function fitTwoPoint(points: readonly RotorPoint[]): CurveFit & { readonly twoPoint: true } {
  const fit = fitLinear({
    design: points.map(({ phi }) => [1, -(phi ** 2)]),
    response: points.map((point) => point.psi),
    weights: points.map((point) => point.weight),
  });
  const [psi0, fall] = fit.coefficients;
  if (!(fall > 0 && psi0 > 0))
    throw new NotEnoughDataError(
      "Two flows are known, and the pressure doesn't fall from one to the other.",
      "Take readings at more flows, from blocked to fully open.",
      "points",
    );
  return {
    coefficients: twoPointCurve(psi0, Math.sqrt(psi0 / fall)),
    covariance: fit.covariance === null ? [] : onPowers(fit.covariance),
    degree: 2,
    reason: "two flows only: the parabola ψ₀(1 − (φ/φ_free)²) through them",
    residualSd: fit.residualSd,
    rSquared: fit.rSquared,
    aicc: null,
    leaveOneOutSd: null,
    outliers: [],
    dof: fit.dof,
    twoPoint: true,
  };
}

/** From (ψ₀, fall) to the coefficients of 1, φ, φ². */
function onPowers([[level, both], [, fall]]: readonly (readonly number[])[]): number[][] {
  return [
    [level, 0, -both],
    [0, 0, 0],
    [-both, 0, fall],
  ];
}
