import { NoConvergenceError, OutOfRangeError, requirePositive } from "./errors.ts";
import type { Tails } from "./incompleteGamma.ts";
import { deviance, stirlingError } from "./saddlePoint.ts";

const MAX_TERMS = 100_000;
/** Stands in for a denominator of 0 in a continued fraction. */
const TINY = 1e-300;

/**
 * Incomplete beta function, as shares of the whole.
 *
 *     I = (1/B(a, b)) ∫₀ˣ tᵃ⁻¹ (1 − t)ᵇ⁻¹ dt
 *
 * @param a - first shape, > 0 [-]
 * @param b - second shape, > 0 [-]
 * @param x - upper limit, 0 to 1 [-]
 * @param complement - 1 − x, where it is known to more digits than x leaves of it [-]
 * @returns lower I and upper 1 − I [-]
 * @throws {OutOfRangeError} on a shape ≤ 0, x or its complement outside 0…1, NaN
 * @throws {NoConvergenceError} where the continued fraction doesn't end, shapes beyond about 1e9
 *
 * Valid for shapes up to about 1e9, to about 1e-13 relative in the smaller tail.
 * Source: Didonato & Morris, ACM Trans. Math. Softw. 18 (1992) 360–373; factor before it by Loader (2000)
 */
export function incompleteBeta(a: number, b: number, x: number, complement = 1 - x): Tails {
  requirePositive("a", a);
  requirePositive("b", b);
  for (const [quantity, value] of [
    ["x", x],
    ["complement", complement],
  ] as const)
    if (!(value >= 0 && value <= 1)) throw new OutOfRangeError(quantity, value, "0 to 1");
  if (x === 0) return { lower: 0, upper: 1 };
  if (complement === 0) return { lower: 1, upper: 0 };
  if (x * (b + 1) <= complement * (a + 1)) {
    const lower = headed(a, b, x, complement);
    return { lower, upper: 1 - lower };
  }
  const upper = headed(b, a, complement, x);
  return { lower: 1 - upper, upper };
}

/** xᵃyᵇ/B(a, b) times the continued fraction. */
function headed(a: number, b: number, x: number, y: number): number {
  const n = a + b;
  const exponent =
    stirlingError(n) - stirlingError(a) - stirlingError(b) - deviance(a, n * x) - deviance(b, n * y);
  const factor = Math.exp(exponent) * Math.sqrt((a / n) * (b / (2 * Math.PI)));
  return factor * continuedFraction(a, b, x, y);
}

/** Lentz's evaluation, from the head, of α₁/(β₁ + α₂/(β₂ + …)). */
function continuedFraction(a: number, b: number, x: number, y: number): number {
  const first = denominator(a, b, x, y, 0);
  let c = 1 / TINY;
  let d = 1 / first;
  let fraction = d;
  for (let m = 1; m < MAX_TERMS; m += 1) {
    const odd = a + 2 * m - 1;
    const numerator = ((a + m - 1) / odd) * ((a + b + m - 1) / odd) * m * (b - m) * x * x;
    const next = denominator(a, b, x, y, m);
    d = 1 / nonZero(numerator * d + next);
    c = nonZero(next + numerator / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) <= Number.EPSILON) return fraction;
  }
  throw new NoConvergenceError(`the incomplete beta function of shapes ${a}, ${b} did not settle`, MAX_TERMS);
}

/** β of Didonato & Morris, equation 9: m + m(b − m)x/(a + 2m − 1) + (a + m)/(a + 2m + 1)·[a y − b x + 1 + m(1 + y)] */
function denominator(a: number, b: number, x: number, y: number, m: number): number {
  const last = ((a + m) / (a + 2 * m + 1)) * (a * y - b * x + 1 + m * (1 + y));
  return m === 0 ? last : m + (m * (b - m) * x) / (a + 2 * m - 1) + last;
}

function nonZero(x: number): number {
  return Math.abs(x) < TINY ? TINY : x;
}
