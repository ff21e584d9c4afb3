/** 2²⁷ + 1 splits a double into two halves of 26 bits (Veltkamp). */
const SPLITTER = 134217729;

/**
 * A sum of products in twice the working precision.
 *
 *     hi + lo = Σ aᵢbᵢ, every rounding error of hi gathered in lo
 *
 * Valid while the factors lie between about 1e-145 and 1e150 in size, or are 0.
 * Source: Ogita, Rump & Oishi, SIAM J. Sci. Comput. 26 (2005) 1955–1988, algorithm Dot2; splitting by Dekker, Numer. Math. 18 (1971) 224–242
 */
export class PreciseSum {
  private sum = 0;
  private errors = 0;

  /** Starts a new sum at hi + lo. @returns this sum */
  start(hi = 0, lo = 0): this {
    this.sum = hi;
    this.errors = lo;
    return this;
  }

  /** Adds a number. @returns this sum */
  add(x: number): this {
    const total = this.sum + x;
    const virtual = total - this.sum;
    this.errors += this.sum - (total - virtual) + (x - virtual);
    this.sum = total;
    return this;
  }

  /** Adds a·b. @returns this sum */
  addProduct(a: number, b: number): this {
    const product = a * b;
    let big = SPLITTER * a;
    const aHigh = big - (big - a);
    const aLow = a - aHigh;
    big = SPLITTER * b;
    const bHigh = big - (big - b);
    const bLow = b - bHigh;
    this.errors += aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
    return this.add(product);
  }

  /** Adds Σₖ a[from + k·stride]·b[k] over all of b, as `addProduct` would, in one run of local numbers. @returns this sum */
  addDot(a: Doubled, from: number, stride: number, b: Doubled): this {
    const { hi: aHi, lo: aLo } = a;
    const { hi: bHi, lo: bLo } = b;
    let { sum, errors } = this;
    for (let k = 0, i = from; k < bHi.length; k += 1, i += stride) {
      const x = aHi[i];
      const y = bHi[k];
      const product = x * y;
      const xBig = SPLITTER * x;
      const yBig = SPLITTER * y;
      const xHigh = xBig - (xBig - x);
      const yHigh = yBig - (yBig - y);
      const xLow = x - xHigh;
      const yLow = y - yHigh;
      const total = sum + product;
      const virtual = total - sum;
      errors += xLow * yLow - (product - xHigh * yHigh - xLow * yHigh - xHigh * yLow);
      errors += sum - (total - virtual) + (product - virtual) + (x * bLo[k] + aLo[i] * y);
      sum = total;
    }
    this.sum = sum;
    this.errors = errors;
    return this;
  }

  /** the sum, rounded once */
  get hi(): number {
    return this.sum + this.errors;
  }

  /** what the rounding of `hi` left out */
  get lo(): number {
    const total = this.sum + this.errors;
    return this.sum - total + this.errors;
  }
}

/** Numbers in twice the working precision: each is hi + lo. */
export interface Doubled {
  readonly hi: Float64Array;
  readonly lo: Float64Array;
}

/** @returns as many zeros in twice the working precision */
export function doubledZeros(length: number): Doubled {
  return { hi: new Float64Array(length), lo: new Float64Array(length) };
}

/** Keeps a sum as element i. */
export function store(target: Doubled, i: number, sum: PreciseSum): void {
  const { hi, lo } = sum;
  target.hi[i] = hi;
  target.lo[i] = lo;
}

/** Adds the product of elements i of a and j of b, less the product of their low parts, which lies below the precision. */
export function addDoubledProduct(sum: PreciseSum, a: Doubled, i: number, b: Doubled, j: number): void {
  sum.addProduct(a.hi[i], b.hi[j]);
  sum.add(a.hi[i] * b.lo[j] + a.lo[i] * b.hi[j]);
}
