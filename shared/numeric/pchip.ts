import { NotEnoughDataError, OutOfRangeError, requireFinite } from "./errors.ts";

export interface Pchip {
  /** The curve at x [unit of y]. @throws {OutOfRangeError} outside `clampedTo` */
  value(x: number): number;
  /** The curve's slope at x [unit of y over unit of x]. @throws {OutOfRangeError} outside `clampedTo` */
  slope(x: number): number;
  /** first and last x: a caller who wants the end value held further out clamps x to this, openly [unit of x] */
  readonly clampedTo: readonly [number, number];
}

/**
 * Monotone piecewise cubic through points: rises only where they rise, turns only where they turn.
 *
 *     inner slope d = (w₁ + w₂)/(w₁/δ₁ + w₂/δ₂), w₁ = 2h₂ + h₁, w₂ = h₂ + 2h₁; 0 where the secants δ change sign
 *
 * @param xs - places of the points, strictly increasing, two or more [unit of x]
 * @param ys - values at them, as many [unit of y]
 * @returns the curve, its slope and the range it may be asked for [unit of y, unit of y over unit of x, unit of x]
 * @throws {NotEnoughDataError} on fewer than two points
 * @throws {OutOfRangeError} on xs that don't increase, a value that is not finite, lists of unlike length
 *
 * Valid between the first and the last point; outside it throws. Two points give a straight line.
 * Source: Fritsch & Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300–304; end slopes by the three-point formula of PCHIP, limited to keep the shape
 */
export function createPchip(xs: readonly number[], ys: readonly number[]): Pchip {
  checkPoints(xs, ys);
  const x = Float64Array.from(xs);
  const y = Float64Array.from(ys);
  const d = nodeSlopes(x, y);
  const last = x.length - 1;
  const clampedTo = [at(x, 0), at(x, last)] as const;
  const locate = (where: number): number => {
    if (!(where >= clampedTo[0] && where <= clampedTo[1]))
      throw new OutOfRangeError("x", where, `${clampedTo[0]} to ${clampedTo[1]}`);
    return intervalOf(x, where);
  };
  return {
    clampedTo,
    value: (where) => hermite(x, y, d, locate(where), where),
    slope: (where) => hermiteSlope(x, y, d, locate(where), where),
  };
}

function checkPoints(xs: readonly number[], ys: readonly number[]): void {
  if (xs.length !== ys.length)
    throw new OutOfRangeError("number of ys", ys.length, `${xs.length}, one for each x`);
  if (xs.length < 2)
    throw new NotEnoughDataError(
      `A curve needs two points, there are ${xs.length}.`,
      "Give a point at each end.",
    );
  xs.forEach((x, i) => {
    requireFinite(`ys[${i}]`, ys[i] ?? Number.NaN);
    requireFinite(`xs[${i}]`, x);
    const before = xs[i - 1];
    if (before !== undefined && !(x > before))
      throw new OutOfRangeError(`xs[${i}]`, x, `greater than ${before}`);
  });
}

function at(values: Float64Array, i: number): number {
  return values[i] ?? Number.NaN;
}

function nodeSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const last = x.length - 1;
  const h = Float64Array.from({ length: last }, (_, i) => at(x, i + 1) - at(x, i));
  const delta = h.map((width, i) => (at(y, i + 1) - at(y, i)) / width);
  if (last === 1) return Float64Array.of(at(delta, 0), at(delta, 0));
  return Float64Array.from({ length: last + 1 }, (_, i) => {
    if (i === 0) return endSlope(at(h, 0), at(h, 1), at(delta, 0), at(delta, 1));
    if (i === last)
      return endSlope(at(h, last - 1), at(h, last - 2), at(delta, last - 1), at(delta, last - 2));
    return innerSlope(at(h, i - 1), at(h, i), at(delta, i - 1), at(delta, i));
  });
}

function innerSlope(h1: number, h2: number, delta1: number, delta2: number): number {
  if (delta1 === 0 || Math.sign(delta1) !== Math.sign(delta2)) return 0;
  const w1 = 2 * h2 + h1;
  const w2 = h2 + 2 * h1;
  return (w1 + w2) / (w1 / delta1 + w2 / delta2);
}

/** Three-point end slope; never against the first secant, never steeper than three times it where the shape turns. */
function endSlope(h1: number, h2: number, delta1: number, delta2: number): number {
  const slope = ((2 * h1 + h2) * delta1 - h1 * delta2) / (h1 + h2);
  if (Math.sign(slope) !== Math.sign(delta1)) return 0;
  const turns = Math.sign(delta1) !== Math.sign(delta2);
  return turns && Math.abs(slope) > 3 * Math.abs(delta1) ? 3 * delta1 : slope;
}

function intervalOf(x: Float64Array, where: number): number {
  let lo = 0;
  let hi = x.length - 1;
  while (hi - lo > 1) {
    const middle = (lo + hi) >> 1;
    if (at(x, middle) <= where) lo = middle;
    else hi = middle;
  }
  return lo;
}

function hermite(x: Float64Array, y: Float64Array, d: Float64Array, i: number, where: number): number {
  const h = at(x, i + 1) - at(x, i);
  const t = (where - at(x, i)) / h;
  const u = 1 - t;
  const ends = at(y, i) * u * u * (1 + 2 * t) + at(y, i + 1) * t * t * (1 + 2 * u);
  return ends + h * t * u * (at(d, i) * u - at(d, i + 1) * t);
}

function hermiteSlope(x: Float64Array, y: Float64Array, d: Float64Array, i: number, where: number): number {
  const h = at(x, i + 1) - at(x, i);
  const t = (where - at(x, i)) / h;
  const u = 1 - t;
  const secant = (at(y, i + 1) - at(y, i)) / h;
  return 6 * t * u * secant + at(d, i) * u * (1 - 3 * t) + at(d, i + 1) * t * (1 - 3 * u);
}
