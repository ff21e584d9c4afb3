import { addDoubledProduct, type Doubled, doubledZeros, PreciseSum, store } from "./doubleDouble.ts";

/** x ↦ t = (x − middle)/half, which runs over [−1, 1]. */
export interface Centring {
  readonly middle: number;
  readonly half: number;
}

/**
 * The shift and stretch that bring some places onto [−1, 1].
 *
 *     t = (x − middle)/half
 *
 * @param x - places, one or more [unit of x]
 * @returns the middle of their range and half its width, 1 where they all lie at one place [unit of x]
 *
 * Valid for finite places. Source: elementary
 */
export function centringOf(x: readonly number[]): Centring {
  const lo = x.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
  const hi = x.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  return { middle: lo + (hi - lo) / 2, half: hi > lo ? (hi - lo) / 2 : 1 };
}

/**
 * Chebyshev polynomials at given places, in twice the working precision.
 *
 *     T₀ = 1, T₁ = t, Tₖ₊₁ = 2t·Tₖ − Tₖ₋₁
 *
 * @param x - places [unit of x]
 * @param degree - highest degree [-]
 * @param centring - from x to t [unit of x]
 * @returns by columns, Tₖ(tᵢ) at i + k·(number of places) [-]
 *
 * Valid for any degree. Source: Abramowitz & Stegun 22.7.4
 */
export function chebyshevColumns(x: readonly number[], degree: number, centring: Centring): Doubled {
  const rows = x.length;
  const basis = doubledZeros(rows * (degree + 1));
  const twice = doubledZeros(1);
  const sum = new PreciseSum();
  for (let i = 0; i < rows; i += 1) {
    basis.hi[i] = 1;
    if (degree === 0) continue;
    storeCentred(basis, i + rows, x[i], centring);
    twice.hi[0] = 2 * basis.hi[i + rows];
    twice.lo[0] = 2 * basis.lo[i + rows];
    for (let k = 2; k <= degree; k += 1) {
      const before = i + (k - 2) * rows;
      sum.start(-basis.hi[before], -basis.lo[before]);
      addDoubledProduct(sum, basis, before + rows, twice, 0);
      store(basis, before + 2 * rows, sum);
    }
  }
  return basis;
}

function storeCentred(target: Doubled, at: number, x: number, { middle, half }: Centring): void {
  const distance = new PreciseSum().add(x).add(-middle);
  storeQuotient(target, at, distance.hi, distance.lo, half);
}

function storeQuotient(target: Doubled, at: number, hi: number, lo: number, divisor: number): void {
  const quotient = hi / divisor;
  const rest = new PreciseSum().start(hi, lo).addProduct(-quotient, divisor).hi;
  store(target, at, new PreciseSum().add(quotient).add(rest / divisor));
}

/**
 * Chebyshev polynomials of t written in powers of x.
 *
 *     Tₖ((x − middle)/half) = Σⱼ Pₖⱼ xʲ
 *
 * @param degree - highest degree [-]
 * @param centring - from x to t [unit of x]
 * @returns Pₖⱼ at k·(degree + 1) + j, in twice the working precision [1 over powers of the unit of x]
 *
 * Valid for any degree. Source: the recurrence of {@link chebyshevColumns}
 */
export function powersOfChebyshev(degree: number, centring: Centring): Doubled {
  const width = degree + 1;
  const powers = doubledZeros(width * width);
  powers.hi[0] = 1;
  const slope = doubledZeros(1);
  storeQuotient(slope, 0, 1, 0, centring.half);
  for (let k = 1; k <= degree; k += 1) raiseDegree(powers, k, width, slope, centring.middle);
  return powers;
}

/** Row k from the rows before it: t times the last (twice that from k = 2 on), less the one before. */
function raiseDegree(powers: Doubled, k: number, width: number, slope: Doubled, middle: number): void {
  const [last, before] = [(k - 1) * width, (k - 2) * width];
  const factor = k === 1 ? 1 : 2;
  const shifted = doubledZeros(1);
  const sum = new PreciseSum();
  for (let j = 0; j <= k; j += 1) {
    sum.start();
    if (j > 0) sum.start(powers.hi[last + j - 1], powers.lo[last + j - 1]);
    sum.addProduct(-middle, powers.hi[last + j]).add(-middle * powers.lo[last + j]);
    shifted.hi[0] = factor * sum.hi;
    shifted.lo[0] = factor * sum.lo;
    sum.start();
    if (k > 1) sum.start(-powers.hi[before + j], -powers.lo[before + j]);
    addDoubledProduct(sum, shifted, 0, slope, 0);
    store(powers, k * width + j, sum);
  }
}
