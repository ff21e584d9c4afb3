import { OutOfRangeError, requireFinite, requirePositive } from "./errors.ts";
import { findRoot } from "./root.ts";

/** Roundings of one Horner step that a value may be made of and still count as zero. */
const ROUNDINGS_PER_STEP = 4;

export interface Extremum {
  readonly x: number;
  readonly value: number;
}

/**
 * Value of a polynomial by Horner's rule.
 *
 *     p(x) = c₀ + c₁x + c₂x² + …
 *
 * @param coefficients - ascending powers; an empty list is 0 [unit of p over powers of x]
 * @param x - where to evaluate [unit of x]
 * @returns p(x) [unit of p]
 *
 * Valid for any finite input. Source: Horner's rule
 */
export function evaluatePolynomial(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) value = value * x + (coefficients[i] ?? 0);
  return value;
}

/**
 * Derivative of a polynomial.
 *
 *     p′(x) = c₁ + 2c₂x + 3c₃x² + …
 *
 * @param coefficients - ascending powers [unit of p over powers of x]
 * @returns ascending powers of the derivative, one fewer; [0] for a constant [unit of p over powers of x]
 *
 * Valid for any degree. Source: elementary calculus
 */
export function differentiatePolynomial(coefficients: readonly number[]): number[] {
  if (coefficients.length < 2) return [0];
  return coefficients.slice(1).map((c, i) => c * (i + 1));
}

/**
 * Every real zero of a polynomial in a closed interval, touching ones included, each once.
 *
 *     between neighbouring zeros of p′ the polynomial is monotone, so each stretch holds at most one zero
 *
 * @param coefficients - ascending powers, not all 0 [unit of p over powers of x]
 * @param lo - lower end [unit of x]
 * @param hi - upper end, not below lo [unit of x]
 * @returns the zeros, ascending [unit of x]; a value within the rounding of its own terms counts as zero
 * @throws {OutOfRangeError} on the zero polynomial, a coefficient or an end that is not finite, hi < lo
 *
 * Valid for degrees up to about 8; beyond, rounding may merge close zeros. Source: Rolle's theorem
 */
export function zerosOn(coefficients: readonly number[], lo: number, hi: number): number[] {
  const c = trimmed(coefficients);
  requireFinite("lo", lo);
  if (!(hi >= lo && hi < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError("hi", hi, `finite, ${lo} or greater`);
  return monotoneZeros(c, lo, hi);
}

/**
 * The first place right of 0 where a polynomial reaches zero, crossing or touching.
 *
 *     min { x > 0 : p(x) = 0 }
 *
 * @param coefficients - ascending powers, not all 0 [unit of p over powers of x]
 * @param limit - how far to look, as far as any zero can lie unless given [unit of x]
 * @returns the zero [unit of x], or null where there is none
 * @throws {OutOfRangeError} on the zero polynomial, a coefficient that is not finite, limit ≤ 0
 *
 * Valid for degrees up to about 8. Source: {@link zerosOn}; bounds on the zeros by Fujiwara (Tôhoku Math. J. 10 (1916) 167–171)
 */
export function firstPositiveZero(coefficients: readonly number[], limit?: number): number | null {
  if (limit !== undefined) requirePositive("limit", limit);
  const c = trimmed(coefficients);
  while (c[0] === 0) c.shift();
  if (c.length < 2) return null;
  const nearest = 1 / zeroBound([...c].reverse());
  const farthest = Math.min(limit ?? Number.POSITIVE_INFINITY, zeroBound(c));
  if (!(farthest >= nearest)) return null;
  return monotoneZeros(c, nearest, farthest)[0] ?? null;
}

/**
 * Largest value of a polynomial on a closed interval.
 *
 *     max p(x), lo ≤ x ≤ hi
 *
 * @param coefficients - ascending powers [unit of p over powers of x]
 * @param lo - lower end [unit of x]
 * @param hi - upper end, not below lo [unit of x]
 * @returns where it lies [unit of x] and how large it is [unit of p]; the leftmost of equals
 * @throws {OutOfRangeError} on a coefficient or an end that is not finite, hi < lo
 *
 * Valid for degrees up to about 8. Source: an extremum lies at an end or where p′ = 0
 */
export function maximumOn(coefficients: readonly number[], lo: number, hi: number): Extremum {
  const slope = differentiatePolynomial(coefficients);
  const turns = slope.some((c) => c !== 0) ? zerosOn(slope, lo, hi) : [];
  let best = { x: lo, value: evaluatePolynomial(coefficients, requireFinite("lo", lo)) };
  for (const x of [...turns, requireFinite("hi", hi)]) {
    const value = evaluatePolynomial(coefficients, x);
    if (value > best.value) best = { x, value };
  }
  return best;
}

function trimmed(coefficients: readonly number[]): number[] {
  const c = coefficients.map((value, i) => requireFinite(`coefficients[${i}]`, value));
  while (c.length > 0 && c[c.length - 1] === 0) c.pop();
  if (c.length === 0) throw new OutOfRangeError("coefficients", 0, "at least one that is not 0");
  return c;
}

/** Fujiwara's bound: no zero of p lies further from 0. */
function zeroBound(c: readonly number[]): number {
  const last = c.length - 1;
  const leading = Math.abs(c[last] ?? 0);
  let bound = 0;
  for (let i = 0; i < last; i += 1)
    bound = Math.max(bound, (Math.abs(c[i] ?? 0) / leading) ** (1 / (last - i)));
  return 2 * bound;
}

/** -1, 0 or 1; 0 where the value is no more than the rounding of its own terms. */
function signAt(c: readonly number[], x: number): number {
  let value = 0;
  let size = 0;
  for (let i = c.length - 1; i >= 0; i -= 1) {
    value = value * x + (c[i] ?? 0);
    size = size * Math.abs(x) + Math.abs(c[i] ?? 0);
  }
  const rounding = ROUNDINGS_PER_STEP * c.length * Number.EPSILON * size;
  return Math.abs(value) <= rounding ? 0 : Math.sign(value);
}

function monotoneZeros(c: readonly number[], lo: number, hi: number): number[] {
  if (c.length < 2) return [];
  if (c.length === 2) {
    const zero = -(c[0] ?? 0) / (c[1] ?? 0);
    return zero >= lo && zero <= hi ? [zero] : [];
  }
  const nodes = [...new Set([lo, ...monotoneZeros(differentiatePolynomial(c), lo, hi), hi])];
  const zeros: number[] = [];
  let before = 0;
  nodes.forEach((x, i) => {
    const sign = signAt(c, x);
    const previous = nodes[i - 1];
    if (previous !== undefined && before * sign < 0)
      zeros.push(findRoot((at) => evaluatePolynomial(c, at), previous, x).root);
    if (sign === 0) zeros.push(x);
    before = sign;
  });
  return zeros;
}
