import { NoConvergenceError, OutOfRangeError, requireFinite, requirePositive } from "./errors.ts";

export interface RootOptions {
  /** width of the last bracket relative to the root [-] */
  readonly tolerance?: number;
  /** evaluations after the two at the ends [-] */
  readonly maxIterations?: number;
}

export interface RootResult {
  readonly root: number;
  readonly converged: boolean;
  readonly iterations: number;
}

const DEFAULT_TOLERANCE = 1e-14;
const DEFAULT_MAX_ITERATIONS = 1200;
/** Width below which a bracket counts as one number: a root at 0 can meet no relative tolerance. */
const FLOOR = 1e-300;
/** Evaluations after which a bracket that holds 0 is taken for one whose root lies at 0 or decades below its ends. */
const PATIENCE = 50;
/** Ends of one sign further apart than this ratio are halved by their geometric mean, so that decades cost as little as digits. */
const WIDE_RATIO = 1e3;

/**
 * The one root of a continuous function between two ends of opposite sign.
 *
 *     inverse quadratic interpolation where it is safe, bisection elsewhere
 *
 * @param f - function of one variable, opposite signs at the ends [any unit]
 * @param lo - lower end of the bracket [unit of x]
 * @param hi - upper end of the bracket, above lo [unit of x]
 * @param options - tolerance relative to the root, 1e-14 unless given; most evaluations, 1200 unless given [-]
 * @returns the root [unit of x], `converged` always true, the evaluations it took [-]
 * @throws {OutOfRangeError} on ends that are no interval, or without a change of sign
 * @throws {NoConvergenceError} where f is NaN, or when the evaluations are used up
 *
 * Valid for continuous f; at a jump the place of the jump is returned. Infinite values are taken by their sign.
 * Source: Chandrupatla, Advances in Engineering Software 28 (1997) 145–149
 */
export function findRoot(
  f: (x: number) => number,
  lo: number,
  hi: number,
  options: RootOptions = {},
): RootResult {
  const tolerance = requirePositive("tolerance", options.tolerance ?? DEFAULT_TOLERANCE);
  const maxIterations = options.maxIterations ?? DEFAULT_MAX_ITERATIONS;
  requireFinite("lo", lo);
  if (!(hi > lo && hi < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError("hi", hi, `finite, greater than ${lo}`);
  let [a, b] = [hi, lo];
  let [fa, fb] = [evaluate(f, hi, 0), evaluate(f, lo, 0)];
  if (fa === 0) return { root: a, converged: true, iterations: 0 };
  if (fb === 0) return { root: b, converged: true, iterations: 0 };
  if (fa > 0 === fb > 0) throw new OutOfRangeError("f(hi)", fa, `the sign opposite to f(lo) = ${fb}`);
  let x = middle(a, b);
  for (let iterations = 1; iterations <= maxIterations; iterations += 1) {
    const fx = evaluate(f, x, iterations);
    let [c, fc] = [a, fa];
    if (fx > 0 !== fa > 0) [c, fc, b, fb] = [b, fb, a, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const width = tolerance * Math.abs(best) + FLOOR;
    if (fa === 0 || Math.abs(b - a) < width) return { root: best, converged: true, iterations };
    x = keptInside(next(a, b, c, fa, fb, fc, iterations > PATIENCE), a, b, width / 2);
  }
  throw new NoConvergenceError(`no root to ${tolerance} within ${maxIterations} evaluations`, maxIterations);
}

function evaluate(f: (x: number) => number, x: number, iterations: number): number {
  const value = f(x);
  if (Number.isNaN(value)) throw new NoConvergenceError(`the function is not a number at ${x}`, iterations);
  return value;
}

/** The next place to look at: Chandrupatla's criterion admits the interpolation on a bracket within a few decades, else the middle. */
function next(
  a: number,
  b: number,
  c: number,
  fa: number,
  fb: number,
  fc: number,
  impatient: boolean,
): number {
  if (isWide(a, b)) return geometricMean(a, b);
  if (impatient && Math.sign(a) !== Math.sign(b)) return towardsZero(a, b);
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  const admitted = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
  if (!admitted) return middle(a, b);
  const share =
    (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
  return a + share * (b - a);
}

/** Ends of one sign, decades apart; an end at 0 is not. */
function isWide(a: number, b: number): boolean {
  return a > 0 === b > 0 && a !== 0 && b !== 0 && (a / b > WIDE_RATIO || b / a > WIDE_RATIO);
}

function middle(a: number, b: number): number {
  return isWide(a, b) ? geometricMean(a, b) : a + (b - a) / 2;
}

function geometricMean(a: number, b: number): number {
  return Math.sign(a) * Math.sqrt(Math.abs(a)) * Math.sqrt(Math.abs(b));
}

/** Between ends of opposite sign 0 itself; beside an end at 0 the middle of the decades down to FLOOR. */
function towardsZero(a: number, b: number): number {
  return a !== 0 && b !== 0 ? 0 : (Math.sign(a + b) * Math.sqrt(FLOOR) * Math.sqrt(Math.abs(a + b))) / 2;
}

/** At least `margin` away from both ends, so that every step shortens the bracket. */
function keptInside(x: number, a: number, b: number, margin: number): number {
  const step = Math.sign(b - a) * margin;
  if ((x - a) * Math.sign(step) < margin) return a + step;
  if ((b - x) * Math.sign(step) < margin) return b - step;
  return x;
}
