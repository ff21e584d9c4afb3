import { NotEnoughDataError } from "../numeric/errors.ts";
import { fitLinear } from "../numeric/leastSquares.ts";
import { differentiatePolynomial, evaluatePolynomial } from "../numeric/polynomial.ts";
import type { RotorPoint } from "./rotorPoints.ts";

/** What one round of Gauss–Newton leaves of the offsets. */
export interface OffsetRound {
  readonly psi: readonly number[];
  /** offset of each test against the first, whose own is 0 [-] */
  readonly steps: readonly number[];
  /** of the offsets with each other [-]; 0 for the first */
  readonly covariance: readonly (readonly number[])[];
  readonly residualSd: number;
}

/** How the curve's columns and ψ share in the lean of one test, and Σ w·lean². */
interface Lean {
  readonly squares: number;
  readonly ofColumns: readonly number[];
  readonly ofResponse: number;
}

/**
 * One curve and an offset for each test by least squares, the offsets taken out test by test.
 *
 *     ψ_read = p(φ) + e·l, l = φp′ − 2p; each test's rows without their part along l, then the curve alone: of the same solution as all columns at once
 *
 * @param points - φ, ψ, weight and test [-]
 * @param tests - numbers of the tests; the first has no offset
 * @param psi - curve that the leans l are taken at [-]
 * @returns curve, offsets, their covariance, residual sd [-]
 * @throws {NotEnoughDataError} on too few points for a curve and the offsets
 *
 * Valid as {@link fitLinear}. Source: Frisch & Waugh, Econometrica 1 (1933) 387–401; Lovell, J. Am. Stat. Assoc. 58 (1963) 993–1010
 */
export function offsetRound(
  points: readonly RotorPoint[],
  tests: readonly number[],
  psi: readonly number[],
): OffsetRound {
  const counted = points.filter(({ weight }) => weight > 0).length;
  const dof = counted - psi.length - (tests.length - 1);
  if (!(dof > 0)) throw tooFew();
  const slope = differentiatePolynomial(psi);
  const leanAt = (phi: number) => phi * evaluatePolynomial(slope, phi) - 2 * evaluatePolynomial(psi, phi);
  const own = (test: number) => points.filter((point) => point.test === test);
  const leans = tests.map((test, k) => (k === 0 ? null : leanOf(own(test), psi.length, leanAt)));
  const of = new Map(tests.map((test, k) => [test, leans[k]]));
  const without = points.map((point) =>
    cleared(point, psi.length, leanAt(point.phi), of.get(point.test) ?? null),
  );
  const fit = fitLinear({
    design: without.map(({ row }) => row),
    response: without.map(({ response }) => response),
    weights: points.map(({ weight }) => weight),
  });
  const curve = (fit.covariance ?? []).map((row) => row.map((c) => (c * fit.dof) / dof));
  return {
    psi: fit.coefficients,
    steps: leans.map((lean) => (lean ? lean.ofResponse - dot(lean.ofColumns, fit.coefficients) : 0)),
    covariance: covarianceOf(leans, curve, fit.rss / dof),
    residualSd: Math.sqrt(fit.rss / dof),
  };
}

function tooFew(): NotEnoughDataError {
  return new NotEnoughDataError(
    "There are too few points for a curve and an offset of each test.",
    "Take more readings in each test.",
    "points",
  );
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, x, j) => sum + x * b[j], 0);

function leanOf(points: readonly RotorPoint[], columns: number, leanAt: (phi: number) => number): Lean {
  const leans = points.map(({ phi, weight }) => ({ phi, lean: leanAt(phi), weight }));
  const squares = leans.reduce((sum, { lean, weight }) => sum + weight * lean ** 2, 0);
  if (!(squares > 0)) throw tooFew();
  const along = (of: (i: number) => number) =>
    leans.reduce((sum, { lean, weight }, i) => sum + weight * lean * of(i), 0) / squares;
  return {
    squares,
    ofColumns: Array.from({ length: columns }, (_, j) => along((i) => leans[i].phi ** j)),
    ofResponse: along((i) => points[i].psi),
  };
}

/** A reading's row and value without their parts along its test's lean. */
function cleared({ phi, psi }: RotorPoint, columns: number, lean: number, of: Lean | null) {
  const row = Array.from({ length: columns }, (_, j) => phi ** j - (of ? lean * of.ofColumns[j] : 0));
  return { row, response: psi - (of ? lean * of.ofResponse : 0) };
}

/** cov(eₖ, eₗ) = s²·δₖₗ/Σw·l² + gₖᵀ·cov(p)·gₗ */
function covarianceOf(
  leans: readonly (Lean | null)[],
  curve: readonly (readonly number[])[],
  variance: number,
) {
  const carried = leans.map((lean) => lean && curve.map((row) => dot(row, lean.ofColumns)));
  return leans.map((one, k) =>
    leans.map((other, m) => {
      const image = carried[m];
      if (!one || !other || !image) return 0;
      return dot(one.ofColumns, image) + (k === m ? variance / one.squares : 0);
    }),
  );
}
