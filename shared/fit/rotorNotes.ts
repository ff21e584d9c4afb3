import { evaluatePolynomial, firstPositiveZero } from "../numeric/polynomial.ts";
import type { Note } from "../physics/note.ts";
import { type CurveFit, isFewFlows, LOWEST_DEGREE } from "./curveFit.ts";
import { distinctFlows, type RotorPoint } from "./rotorPoints.ts";
import { UNSHOWN } from "./twoPointFit.ts";

export type PsiFit = CurveFit & { readonly twoPoint?: boolean };

/** A last reading above this share of the blocked pressure leaves the end of the curve open [-]. Judgement. */
const OPEN = 0.3;
/** A first reading above this share of the largest flow is not blocked [-]. Judgement. */
const BLOCKED = 0.05;

/**
 * What to know about a fitted rotor curve before trusting it.
 *
 *     notes by code: two-point, no-residual, degree-high, stall, few-flows, no-blocked-reading, no-open-reading, no-free-flow, negative-pressure, no-variation, outliers
 *
 * @param fit - of ψ [-]
 * @param points - φ, ψ [-]
 * @param stall - whether ψ rises with φ [-]
 * @returns the notes [-]
 *
 * Valid for any fit of {@link fitCurve} or {@link fitTwoPoint}. Source: docs/method/fits/rotor.md
 */
export function psiNotes(fit: PsiFit, points: readonly RotorPoint[], stall: boolean): Note[] {
  return [...shapeNotes(fit, points, stall), ...rangeNotes(fit, points)];
}

function shapeNotes(fit: PsiFit, points: readonly RotorPoint[], stall: boolean): Note[] {
  const count = points.length;
  const flows = distinctFlows(points.map((point) => point.phi));
  const notes: Note[] = [];
  const note = (code: string, message: string) => notes.push({ code, message });
  if (fit.twoPoint)
    note(
      "two-point",
      "The curve is based on two flows only, ψ = ψ₀(1 − (φ/φ_free)²): a stall hump between them stays unseen. Take readings between.",
    );
  if (fit.dof === 0)
    note(
      "no-residual",
      `The points leave no residual: the curve counts as uncertain by ${100 * UNSHOWN}\u202f%. Repeat readings.`,
    );
  if (!fit.twoPoint && fit.degree > Math.max(LOWEST_DEGREE, Math.floor(count / 3)))
    note("degree-high", `Degree ${fit.degree} is more than a third of the ${count} points.`);
  if (!fit.twoPoint && isFewFlows(flows))
    note(
      "few-flows",
      `The curve is based on ${flows} flows only: a stall hump between them stays unseen. Six or more let the readings choose its shape.`,
    );
  if (stall)
    note("stall", "The pressure rises with the flow over part of the curve: the rotor stalls there.");
  if (fit.outliers.length > 0)
    note(
      "outliers",
      `Points ${fit.outliers.map((index) => index + 1).join(", ")} (counted from 1) stand more than 3 standard deviations off the curve.`,
    );
  return notes;
}

function rangeNotes(fit: PsiFit, points: readonly RotorPoint[]): Note[] {
  const notes: Note[] = [];
  const note = (code: string, message: string) => notes.push({ code, message });
  const phis = points.map((point) => point.phi);
  const phiMax = Math.max(...phis);
  if (Math.min(...phis) > BLOCKED * phiMax)
    note("no-blocked-reading", "No blocked reading: ψ at no flow is extrapolated.");
  if (evaluatePolynomial(fit.coefficients, phiMax) > OPEN * fit.coefficients[0])
    note("no-open-reading", "No open reading: the end of the curve is extrapolated. Open more holes.");
  if (firstPositiveZero(fit.coefficients) === null)
    note("no-free-flow", "The fitted curve never comes down to no pressure. Take readings at larger flows.");
  if (points.some((point) => point.psi < 0))
    note("negative-pressure", "Readings with a pressure below 0 lie past the open end of the curve.");
  if (points.every((point) => point.psi === points[0].psi))
    note("no-variation", "The pressure is the same at every flow. Check the sensor.");
  return notes;
}
