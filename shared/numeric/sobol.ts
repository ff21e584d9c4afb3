import { OutOfRangeError } from "./errors.ts";
import { createRandom } from "./random.ts";
import { JOE_KUO, MAX_DIMENSIONS } from "./sobolDirections.ts";

const BITS = 32;
const TWO_32 = 2 ** BITS;
/** Even multipliers of Laine and Karras: each bit is flipped by a hash of the bits above it alone. */
const FLIPS = [0x6c50b47c, 0xb82f1e52, 0xc7afe638, 0x8d22f6e6];

/**
 * Sobol points as 32-bit whole numbers, unscrambled, in Gray-code order.
 *
 *     xᵢ = xᵢ₋₁ ⊕ v(c), c the place of the lowest 0 bit of i − 1
 *
 * @param count - number of points, from 0 to 2³² − 1 [-]
 * @param dimensions - 1 to 64 [-]
 * @returns the points one after another, each over 2³²; the first is 0 in every dimension [-]
 * @throws {OutOfRangeError} on another count or more dimensions
 *
 * Valid for any count; most even at powers of 2.
 * Source: Joe & Kuo, SIAM J. Sci. Comput. 30 (2008) 2635–2654; order by Antonov & Saleev (1979)
 */
export function sobolBits(count: number, dimensions: number): Uint32Array {
  if (!(Number.isInteger(count) && count >= 0 && count < TWO_32))
    throw new OutOfRangeError("count", count, "a whole number from 0 to 4294967295");
  if (!(Number.isInteger(dimensions) && dimensions >= 1 && dimensions <= MAX_DIMENSIONS))
    throw new OutOfRangeError("dimensions", dimensions, `a whole number from 1 to ${MAX_DIMENSIONS}`);
  const points = new Uint32Array(count * dimensions);
  for (let j = 0; j < dimensions; j += 1) {
    const directions = directionNumbers(j);
    for (let i = 1; i < count; i += 1) {
      const lowestZero = BITS - 1 - Math.clz32(i & -i);
      points[i * dimensions + j] = points[(i - 1) * dimensions + j] ^ directions[lowestZero];
    }
  }
  return points;
}

/**
 * Randomised Sobol points: evenly spread like the plain ones, each of them uniform by the seed.
 *
 *     nested uniform (Owen) scrambling of every dimension, hashed from the seed
 *
 * @param count - number of points [-]
 * @param dimensions - 1 to 64 [-]
 * @param seed - any whole number from 0 to 2³² − 1 [-]
 * @returns the points one after another, every coordinate greater than 0 and less than 1 [-]
 * @throws {OutOfRangeError} on another count, more dimensions, another seed
 *
 * Valid for any count; the error of a smooth mean falls about as count^−1.5 at powers of 2.
 * Source: Burley, Journal of Computer Graphics Techniques 9 (2020) no. 4; Owen, in Monte Carlo and Quasi-Monte Carlo Methods (1995)
 */
export function scrambledSobol(count: number, dimensions: number, seed: number): Float64Array {
  const plain = sobolBits(count, dimensions);
  const random = createRandom(seed);
  const points = new Float64Array(plain.length);
  for (let j = 0; j < dimensions; j += 1) {
    const key = random.bits();
    for (let at = j; at < points.length; at += dimensions)
      points[at] = (scramble(plain[at], key) + 1 / 2) / TWO_32;
  }
  return points;
}

/** Direction numbers v₁ … v₃₂ of dimension j (from 0), each with its first bit at the top. */
function directionNumbers(j: number): Uint32Array {
  const v = new Uint32Array(BITS);
  const [degree, inner, ...first] = j === 0 ? [0, 0] : JOE_KUO[j - 1];
  for (let k = 0; k < BITS; k += 1) {
    if (j === 0) v[k] = 1 << (BITS - 1 - k);
    else if (k < degree) v[k] = first[k] << (BITS - 1 - k);
    else v[k] = recurred(v, k, degree, inner);
  }
  return v;
}

function recurred(v: Uint32Array, k: number, degree: number, inner: number): number {
  let value = v[k - degree] ^ (v[k - degree] >>> degree);
  for (let i = 1; i < degree; i += 1) if ((inner >>> (degree - 1 - i)) & 1) value ^= v[k - i];
  return value;
}

function scramble(bits: number, key: number): number {
  let x = (reversed(bits) + key) | 0;
  for (let i = 0; i < FLIPS.length; i += 1) x ^= Math.imul(x, FLIPS[i]);
  return reversed(x) >>> 0;
}

function reversed(bits: number): number {
  let x = ((bits >>> 1) & 0x55555555) | ((bits & 0x55555555) << 1);
  x = ((x >>> 2) & 0x33333333) | ((x & 0x33333333) << 2);
  x = ((x >>> 4) & 0x0f0f0f0f) | ((x & 0x0f0f0f0f) << 4);
  x = ((x >>> 8) & 0x00ff00ff) | ((x & 0x00ff00ff) << 8);
  return (x >>> 16) | (x << 16);
}
