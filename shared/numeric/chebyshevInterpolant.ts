import { OutOfRangeError, requireFinite, requirePositive } from "./errors.ts";

/** Intervals of the first set of places; each next set halves them. */
const FIRST = 8;
const MOST = 128;

/**
 * A smooth function as a polynomial through its values at Chebyshev places, as many as its smoothness asks for.
 *
 *     xⱼ = middle + half·cos(πj/n),  n = 8, 16 … 128;  p(x) = Σ' (±fⱼ/(x − xⱼ)) / Σ' (±1/(x − xⱼ))
 *
 * @param f - function of one variable, costly to ask [any unit]
 * @param lo - lower end [unit of x]
 * @param hi - upper end, above lo [unit of x]
 * @param tolerance - greatest miss at places not yet asked, relative to the largest |f| [-]
 * @returns the polynomial, x → f(x); null where f is somewhere not finite, or too rough for 128 intervals
 * @throws {OutOfRangeError} on ends that are no interval, a tolerance that is not above 0
 *
 * Valid between the ends for functions that are smooth there; a feature narrower than a third of the spacing may hide.
 * Source: Berrut & Trefethen, SIAM Review 46 (2004) 501–517, the second barycentric formula
 */
export function chebyshevInterpolant(
  f: (x: number) => number,
  lo: number,
  hi: number,
  tolerance: number,
): ((x: number) => number) | null {
  requireFinite("lo", lo);
  if (!(hi > lo && hi < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError("hi", hi, `finite, greater than ${lo}`);
  requirePositive("tolerance", tolerance);
  const [middle, half] = [(lo + hi) / 2, (hi - lo) / 2];
  const place = (j: number, n: number) => middle + half * Math.cos((Math.PI * j) / n);
  let xs = Array.from({ length: FIRST + 1 }, (_, j) => place(j, FIRST));
  let ys = xs.map(f);
  for (let n = 2 * FIRST; n <= MOST; n *= 2) {
    if (!ys.every(Number.isFinite)) return null;
    const coarse = barycentric(xs, ys);
    const between = Array.from({ length: n / 2 }, (_, k) => place(2 * k + 1, n));
    const found = between.map(f);
    const scale = Math.max(...ys.map(Math.abs));
    const miss = Math.max(...found.map((y, k) => Math.abs(y - coarse(between[k]))));
    [xs, ys] = [interleaved(xs, between), interleaved(ys, found)];
    if (miss <= tolerance * scale) return barycentric(xs, ys);
  }
  return null;
}

function interleaved(outer: readonly number[], inner: readonly number[]): number[] {
  return outer.flatMap((value, i) => (i < inner.length ? [value, inner[i]] : [value]));
}

function barycentric(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const [places, values] = [Float64Array.from(xs), Float64Array.from(ys)];
  const last = xs.length - 1;
  const signs = places.map((_, j) => (j % 2 === 0 ? 1 : -1) * (j === 0 || j === last ? 0.5 : 1));
  return (x) => {
    let above = 0;
    let below = 0;
    for (let j = 0; j <= last; j += 1) {
      const distance = x - places[j];
      if (distance === 0) return values[j];
      const weight = signs[j] / distance;
      above += weight * values[j];
      below += weight;
    }
    return above / below;
  };
}
