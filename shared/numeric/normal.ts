import { erfNearZero, scaledErfc } from "./errorFunction.ts";
import { OutOfRangeError } from "./errors.ts";

const ROOT_TWO_PI = 2.5066282746310007;
const LOG_ROOT_TWO_PI = 0.9189385332046728;
/** Up to here Φ comes from erf, whose approximation ends at |x|/√2 = 0.46875. */
const NEAR_ZERO = 0.46875 * Math.SQRT2;
/** Arguments rounded to 1/16 have an exact square. */
const GRID = 16;
/** Terms of a narrow interval's series: the next is below 1e-16 wherever it is asked for. */
const LAST_TERM = 16;
/** A term below this share of a sum changes no digit of it. */
const LOST = Number.EPSILON / 8;
const INVERSES = Float64Array.from({ length: LAST_TERM + 2 }, (_, n) => 1 / n);

/**
 * Density of the standard normal distribution.
 *
 *     φ(x) = exp(−x²/2)/√(2π)
 *
 * @param x - standardised value [-]
 * @returns density [-]
 *
 * Valid for any x; 0 beyond |x| ≈ 38.6. Source: definition
 */
export function normalDensity(x: number): number {
  return halfSquareExponential(x) / ROOT_TWO_PI;
}

/**
 * Share of a standard normal distribution below x.
 *
 *     Φ(x) = ½ erfc(−x/√2)
 *
 * @param x - standardised value [-]
 * @returns probability, in the lower tail as well to about 1e-15 of itself [-]
 *
 * Valid for any x; the upper tail is Φ(−x). Source: {@link scaledErfc}
 */
export function normalCdf(x: number): number {
  if (Math.abs(x) <= NEAR_ZERO) return (1 + erfNearZero(x * Math.SQRT1_2)) / 2;
  const tail = (halfSquareExponential(x) * scaledErfc(Math.abs(x) * Math.SQRT1_2)) / 2;
  return x < 0 ? tail : 1 - tail;
}

/**
 * Logarithm of the share of a standard normal distribution between two values.
 *
 *     ln[Φ(hi) − Φ(lo)]
 *
 * @param lo - lower standardised value, −∞ for none [-]
 * @param hi - upper standardised value, above lo, ∞ for none [-]
 * @returns the logarithm, without cancellation in either tail or in a narrow interval [-]
 * @throws {OutOfRangeError} where hi is not above lo
 *
 * Valid for any interval. Source: narrow ones by the Hermite series of the density (Abramowitz & Stegun 22.9.17), others by {@link scaledErfc}
 */
export function logNormalInterval(lo: number, hi: number): number {
  if (!(hi > lo)) throw new OutOfRangeError("hi", hi, `greater than ${lo}`);
  if (lo > 0 || (lo === 0 && hi > 0)) return logNormalInterval(-hi, -lo);
  if ((hi - lo) * (1 + Math.max(Math.abs(lo), Math.abs(hi))) < 1) return logNarrow(lo, hi);
  if (hi > 0) return Math.log1p(-(normalCdf(lo) + normalCdf(-hi)));
  return logInTail(lo, hi);
}

/** Both ends below 0: exp(−hi²/2) taken out of both shares. */
function logInTail(lo: number, hi: number): number {
  const beyond = Math.exp(((hi - lo) * (hi + lo)) / 2) * scaledErfc(-lo * Math.SQRT1_2);
  return Math.log((scaledErfc(-hi * Math.SQRT1_2) - beyond) / 2) - (hi * hi) / 2;
}

/** Mean of exp(−mu − u²/2) over −half…half by Hermite polynomials: Σ halfⁿ·Heₙ(m)/n!/(n + 1), n even. */
function logNarrow(lo: number, hi: number): number {
  const half = (hi - lo) / 2;
  const middle = lo + half;
  const [step, square] = [middle * half, half * half];
  let [even, odd, mean] = [1, step, 1];
  for (let n = 2; n <= LAST_TERM; n += 2) {
    even = (step * odd - square * even) * INVERSES[n];
    odd = (step * even - square * odd) * INVERSES[n + 1];
    mean += even * INVERSES[n + 1];
    // Each term is less than half of the two before: what follows is lost in the rounding of the sum.
    if (Math.abs(even) + Math.abs(odd) < LOST * mean) break;
  }
  return Math.log(mean * 2 * half) - (middle * middle) / 2 - LOG_ROOT_TWO_PI;
}

/** exp(−x²/2) without the rounding of x² blown up by the exponential: x = g + r with g² exact. */
function halfSquareExponential(x: number): number {
  if (!Number.isFinite(x)) return Math.exp((-x * x) / 2);
  const grid = Math.trunc(x * GRID) / GRID;
  return Math.exp((-grid * grid) / 2) * Math.exp((-(x - grid) * (x + grid)) / 2);
}
