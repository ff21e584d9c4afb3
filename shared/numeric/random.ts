import { OutOfRangeError } from "./errors.ts";

export interface Random {
  /** the next 32 random bits as a whole number [-] */
  bits(): number;
  /** the next uniform number, 0 or greater, less than 1, with 32 random bits [-] */
  uniform(): number;
}

const TWO_32 = 4294967296;
/** SplitMix's increment (the golden ratio's bits) and the multipliers of its 32-bit finaliser. */
const GOLDEN = 0x9e3779b9;
const MIX_1 = 0x85ebca6b;
const MIX_2 = 0xc2b2ae35;

/**
 * A stream of random numbers that the seed alone decides.
 *
 *     xoshiro128**, its state filled by SplitMix from the seed
 *
 * @param seed - any whole number from 0 to 2³² − 1 [-]
 * @returns the stream [-]
 * @throws {OutOfRangeError} on another seed
 *
 * Valid for sampling, not for secrets; period 2¹²⁸ − 1. Source: Blackman & Vigna, ACM Trans. Math. Softw. 47 (2021) article 36
 */
export function createRandom(seed: number): Random {
  if (!(Number.isInteger(seed) && seed >= 0 && seed < TWO_32))
    throw new OutOfRangeError("seed", seed, "a whole number from 0 to 4294967295");
  return randomFrom([1, 2, 3, 4].map((k) => mix((seed + k * GOLDEN) | 0)));
}

/**
 * The stream that goes on from a given state.
 *
 *     next = rotl(5·s₁, 7)·9
 *
 * @param state - four 32-bit numbers, not all 0 [-]
 * @returns the stream [-]
 *
 * Valid for any such state. Source: Blackman & Vigna, reference code of xoshiro128** 1.1
 */
export function randomFrom(state: readonly number[]): Random {
  const s = Int32Array.from(state);
  const bits = (): number => {
    const result = Math.imul(rotated(Math.imul(s[1], 5), 7), 9) >>> 0;
    const shifted = s[1] << 9;
    s[2] ^= s[0];
    s[3] ^= s[1];
    s[1] ^= s[2];
    s[0] ^= s[3];
    s[2] ^= shifted;
    s[3] = rotated(s[3], 11);
    return result;
  };
  return { bits, uniform: () => bits() / TWO_32 };
}

function rotated(x: number, by: number): number {
  return (x << by) | (x >>> (32 - by));
}

function mix(x: number): number {
  let z = Math.imul(x ^ (x >>> 16), MIX_1);
  z = Math.imul(z ^ (z >>> 13), MIX_2);
  return z ^ (z >>> 16);
}
