import { differentiatePolynomial, firstPositiveZero, maximumOn } from "../../numeric/polynomial.ts";
import { MOST_COEFFICIENTS } from "../../physics/point/newton.ts";

type Polynomial = readonly number[];

/** Greatest d ln F/d ln u of the size correction for which one crossing is looked for. */
const MOST_SIZE_SLOPE = 1;

function product(a: Polynomial, b: Polynomial): number[] {
  const sum = Array.from({ length: a.length + b.length - 1 }, () => 0);
  a.forEach((x, i) => {
    b.forEach((y, j) => {
      sum[i + j] += x * y;
    });
  });
  return sum;
}

const combined = (a: Polynomial, share: number, b: Polynomial): number[] =>
  Array.from({ length: Math.max(a.length, b.length) }, (_, i) => (a[i] ?? 0) + share * (b[i] ?? 0));

/** φ·p′ */
const byPhi = (p: Polynomial): number[] => [0, ...differentiatePolynomial(p)];

/** A curve on which every leak meets the rotor once. */
export interface SingleCrossing {
  /** first positive zero of ψ [-] */
  readonly phiEnd: number;
  /** d ln F/d ln u of the size correction up to which that is proven [-] */
  readonly mostSizeSlope: number;
}

/** 0 < λ, and φλ′/λ ≤ 2 so that flow rises with φ and the torques settle. */
function keepsSpeed(lambda: Polynomial, end: number): boolean {
  const falls = maximumOn(combined([0], -1, lambda), 0, end).value;
  return falls < 0 && maximumOn(combined(byPhi(lambda), -2, lambda), 0, end).value <= 0;
}

/** φψ′/ψ + ½(1+ε)(−φλ′/λ) < 1, over the common denominator. */
function fallsEnough(psi: Polynomial, lambda: Polynomial, end: number, sizeSlope: number): boolean {
  const steepening = combined(product(byPhi(psi), lambda), -1, product(psi, lambda));
  const speeding = product(byPhi(lambda), psi);
  return maximumOn(combined(steepening, -(1 + sizeSlope) / 2, speeding), 0, end).value < 0;
}

/**
 * Proves that a rotor meets any leak once, at a stable point, whatever turns it.
 *
 *     φψ′/ψ + ½(1+ε)·max(0, −φλ′/λ) < 1,  λ > 0,  φλ′/λ ≤ 2  on 0…φ_end
 *
 * @param psi - by rising powers of φ [-]
 * @param lambda - by rising powers of φ [-]
 * @returns end of the curve and the greatest ε that it is proven for [-]; null where it is not proven
 *
 * Valid for leaks with 1 ≤ d ln Δp/d ln Q ≤ 2 (all of docs/method/restriction.md) and motors whose speed falls with load by no more than λ^−½, at fixed voltage, cold or warm; ε = d ln F/d ln u of a size correction.
 * Source: docs/method/choosing.md; checks are exact, by the zeros of polynomials
 */
export function singleCrossing(psi: Polynomial, lambda: Polynomial): SingleCrossing | null {
  if (!(psi[0] > 0) || Math.max(psi.length, lambda.length) > MOST_COEFFICIENTS) return null;
  const phiEnd = firstPositiveZero(psi);
  if (phiEnd === null || !keepsSpeed(lambda, phiEnd)) return null;
  const steepens = maximumOn(combined(byPhi(psi), -1, psi), 0, phiEnd).value;
  if (!(steepens < 0)) return null;
  const lambdaRises = maximumOn(combined([0], -1, differentiatePolynomial(lambda)), 0, phiEnd).value <= 0;
  if (lambdaRises) return { phiEnd, mostSizeSlope: Number.POSITIVE_INFINITY };
  for (const mostSizeSlope of [MOST_SIZE_SLOPE, MOST_SIZE_SLOPE / 4, 0])
    if (fallsEnough(psi, lambda, phiEnd, mostSizeSlope)) return { phiEnd, mostSizeSlope };
  return null;
}
