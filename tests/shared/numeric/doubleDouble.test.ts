import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PreciseSum } from "#shared/numeric/doubleDouble.ts";

/** A number as a whole multiple of 2⁻²⁰⁰; products of `part`s are multiples of 2⁻⁹⁰. */
const FRACTION_BITS = 200n;
const exact = (x: number): bigint => BigInt(x * 2 ** 90) << (FRACTION_BITS - 90n);
const part = fc.integer({ min: -(2 ** 52), max: 2 ** 52 }).map((n) => n / 2 ** 45);

describe("PreciseSum, against whole-number arithmetic", () => {
  it("keeps what a plain sum loses", () => {
    expect(new PreciseSum().add(1e16).add(1).add(-1e16).hi).toBe(1);
    expect(0.1 * 0.1 - 0.01).not.toBe(0);
    expect(new PreciseSum().addProduct(0.1, 10).add(-1).hi).toBe(2 ** -54); // 0.1 as stored is 0.1 + 2⁻⁵⁴/10
  });

  it("hi and lo make the exact product", () => {
    fc.assert(
      fc.property(part, part, (a, b) => {
        const sum = new PreciseSum().addProduct(a, b);
        const product = (exact(a) * exact(b)) >> FRACTION_BITS;
        expect(exact(sum.hi) + exact(sum.lo)).toBe(product);
      }),
    );
  });

  it("starts anew from a pair, and hi is that pair rounded once", () => {
    const sum = new PreciseSum().add(5).start(1, 2 ** -60);
    expect(sum.hi).toBe(1);
    expect(sum.lo).toBe(2 ** -60);
  });
});
