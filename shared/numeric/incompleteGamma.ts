import { NoConvergenceError, OutOfRangeError, requireNonNegative, requirePositive } from "./errors.ts";
import { deviance, stirlingError } from "./saddlePoint.ts";

const MAX_TERMS = 100_000;
/** Stands in for a denominator of 0 in a continued fraction. */
const TINY = 1e-300;

/** The two shares that a point divides a distribution into; each keeps its digits where it is small. */
export interface Tails {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Incomplete gamma function, as shares of the whole.
 *
 *     P(a, x) = (1/Γ(a)) ∫₀ˣ tᵃ⁻¹ e⁻ᵗ dt,  Q = 1 − P
 *
 * @param a - shape, > 0 [-]
 * @param x - upper limit, ≥ 0, may be infinite [-]
 * @returns lower P and upper Q [-]
 * @throws {OutOfRangeError} on a ≤ 0, x < 0 or NaN
 * @throws {NoConvergenceError} where neither expansion ends, a beyond about 1e9
 *
 * Valid for a up to about 1e9, to about 1e-14 relative in the smaller tail.
 * Source: Abramowitz & Stegun 6.5.29, 6.5.31; factor before them by Loader (2000)
 */
export function incompleteGamma(a: number, x: number): Tails {
  requirePositive("a", a);
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  if (requireNonNegative("x", x) === 0) return { lower: 0, upper: 1 };
  // xᵃe⁻ˣ/Γ(a + 1)
  const factor = Math.exp(-stirlingError(a) - deviance(a, x)) / Math.sqrt(2 * Math.PI * a);
  if (x < a + 1) {
    const lower = factor * series(a, x);
    return { lower, upper: 1 - lower };
  }
  const upper = factor * a * continuedFraction(a, x);
  return { lower: 1 - upper, upper };
}

/** 1 + x/(a + 1) + x²/((a + 1)(a + 2)) + … */
function series(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; n < MAX_TERMS; n += 1) {
    term *= x / (a + n);
    const next = sum + term;
    if (next === sum) return sum;
    sum = next;
  }
  throw new NoConvergenceError(`the incomplete gamma function of shape ${a} did not settle`, MAX_TERMS);
}

/** 1/(x + 1 − a − 1·(1 − a)/(x + 3 − a − 2·(2 − a)/(x + 5 − a − …))), from its head (Lentz). */
function continuedFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < MAX_TERMS; n += 1) {
    const numerator = n * (a - n);
    b += 2;
    d = 1 / nonZero(numerator * d + b);
    c = nonZero(b + numerator / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) <= Number.EPSILON) return fraction;
  }
  throw new NoConvergenceError(`the incomplete gamma function of shape ${a} did not settle`, MAX_TERMS);
}

function nonZero(x: number): number {
  return Math.abs(x) < TINY ? TINY : x;
}

/** @returns the share itself [-] @throws {OutOfRangeError} unless it can be told from 0 and 1 */
export function requireShare(quantity: string, p: number): number {
  if (!(p >= SMALLEST_SHARE && p < 1))
    throw new OutOfRangeError(quantity, p, `${SMALLEST_SHARE} or greater, less than 1`);
  return p;
}

/** Shares below this would need quantiles beyond the range of numbers. */
const SMALLEST_SHARE = 1e-150;
