import { NotEnoughDataError } from "../numeric/errors.ts";
import { hasStallHump } from "../physics/fanlaws/stallHump.ts";
import type { Note } from "../physics/note.ts";
import { efficiencyNotes } from "../physics/point/efficiencyNotes.ts";
import { type CurveFit, type DegreeWish, fitCurve } from "./curveFit.ts";
import { type PsiFit, psiNotes } from "./rotorNotes.ts";
import { distinctFlows, type RotorPoint, type RotorReadingPoint, rotorPoints } from "./rotorPoints.ts";
import { fitTwoPoint } from "./twoPointFit.ts";

export interface RotorFitRequest {
  /** [m] */
  readonly diameter: number;
  readonly points: readonly RotorReadingPoint[];
  readonly degree?: DegreeWish;
}

export interface RotorFit {
  /** ψ in ascending powers of φ [-] */
  readonly psi: readonly number[];
  /** λ in ascending powers of φ; null without shaft power [-] */
  readonly lambda: readonly number[] | null;
  readonly degree: number;
  readonly reason: string;
  /** of ψ, √(Σwe²/dof): of a reading of weight 1, which is every reading where none carries a weight; a weight w is known to residualSd/√w. 0 where the points leave no residual [-] */
  readonly residualSd: number;
  readonly rSquared: number;
  readonly aicc: number | null;
  /** of ψ [-] */
  readonly leaveOneOutSd: number | null;
  /** of psi; empty where the points leave no residual */
  readonly covariance: readonly (readonly number[])[];
  /** of lambda; empty without one, or where its points leave no residual */
  readonly lambdaCovariance: readonly (readonly number[])[];
  readonly phiMin: number;
  readonly phiMax: number;
  /** whether ψ rises with φ somewhere before it reaches zero, by more than the fit's uncertainty */
  readonly stall: boolean;
  /** indices into the points given */
  readonly outliers: readonly number[];
  readonly warnings: readonly Note[];
  /** degrees of freedom of the residuals, 0 where none is left over [-] */
  readonly dof: number;
}

/**
 * Curve of a rotor family from bench readings at any speeds, sizes and densities.
 *
 *     ψ = Σ cⱼφʲ by weighted least squares, degree 2…4 by AICc, 2 with three to five flows; two flows only: ψ = ψ₀(1 − (φ/φ_free)²)
 *
 * @param request - diameter [m]; points: speed [rpm], flow [m³/s], pressure [Pa], density [kg/m³], shaft power [W], weight [-]; degree, "auto" unless given [-]
 * @returns ψ(φ) and λ(φ) with their statistics, the fitted range and what to know about it [-]
 * @throws {OutOfRangeError} on a reading that can't be, by its path
 * @throws {NotEnoughDataError} on one point, all points at one flow, fewer flows than the degree needs, no pressure at no flow
 *
 * Valid between phiMin and phiMax; the residuals count as independent. A row without a density takes the mean of those that state one, 1.2 kg/m³ where none does.
 * Source: docs/method/fits/rotor.md
 *
 * @example
 * const point = (flow, pressure, shaftPower) => ({ rpm: 18_000, flow, pressure, density: 1.2, shaftPower });
 * const { psi, lambda, degree } = fitRotor({
 *   diameter: 0.044,
 *   points: [point(0, 1080, 3.6), point(0.003, 1010, 6.9), point(0.006, 790, 10.1), point(0.009, 430, 13.4)],
 * });
 * degree; // → 2
 * psi[0]; // → 1.05
 * lambda[1]; // → 1.05
 */
export function fitRotor(request: RotorFitRequest): RotorFit {
  const points = rotorPoints(request.diameter, request.points);
  const wish = request.degree ?? "auto";
  const phis = points.map((point) => point.phi);
  const flows = distinctFlows(phis);
  const fit = fitPsi(points, wish, flows);
  if (!(fit.coefficients[0] > 0))
    throw new NotEnoughDataError(
      "The curve makes no pressure at no flow.",
      "Take a blocked reading, and check that the pressure sensor's ports are not swapped.",
      "points",
    );
  const phiMin = Math.min(...phis);
  const phiMax = Math.max(...phis);
  const shaft = fitLambda(points, wish);
  const stall = hasStallHump(fit.coefficients, fit.covariance, phiMax);
  return {
    psi: fit.coefficients,
    lambda: shaft.lambda,
    degree: fit.degree,
    reason: fit.reason,
    residualSd: fit.residualSd,
    rSquared: fit.rSquared,
    aicc: fit.aicc,
    leaveOneOutSd: fit.leaveOneOutSd,
    covariance: fit.covariance,
    lambdaCovariance: shaft.covariance,
    phiMin,
    phiMax,
    stall,
    outliers: fit.outliers,
    warnings: [
      ...psiNotes(fit, points, stall),
      ...shaft.warnings,
      ...(shaft.lambda ? efficiencyNotes({ psi: fit.coefficients, lambda: shaft.lambda, phiMax }) : []),
    ],
    dof: fit.dof,
  };
}

function fitPsi(points: readonly RotorPoint[], wish: DegreeWish, flows: number): PsiFit {
  if (flows === 2 && wish === "auto") return fitTwoPoint(points);
  return fitCurve(
    points.map(({ phi, psi, weight }) => ({ x: phi, y: psi, weight })),
    wish,
    flows,
  );
}

function fitLambda(
  points: readonly RotorPoint[],
  wish: DegreeWish,
): { lambda: readonly number[] | null; covariance: CurveFit["covariance"]; warnings: Note[] } {
  const known = points.flatMap(({ phi, lambda, weight }) =>
    lambda === null ? [] : [{ x: phi, y: lambda, weight }],
  );
  if (known.length === 0) return { lambda: null, covariance: [], warnings: [] };
  const flows = distinctFlows(known.map((point) => point.x));
  if (flows < 2)
    return {
      lambda: null,
      covariance: [],
      warnings: [
        {
          code: "shaft-power-at-one-flow",
          message:
            "Shaft power is known at one flow only: no power curve. Read the torque or the current at a second flow.",
        },
      ],
    };
  const degree = wish === "auto" || flows <= wish ? "auto" : wish;
  const { coefficients, covariance } = fitCurve(known, degree, flows);
  return { lambda: coefficients, covariance, warnings: [] };
}
