import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import {
  differentiatePolynomial,
  evaluatePolynomial,
  firstPositiveZero,
  maximumOn,
  zerosOn,
} from "#shared/numeric/polynomial.ts";

/** Ascending coefficients of ∏(x − zᵢ), times a factor. */
function fromZeros(zeros: readonly number[], factor = 1): number[] {
  let product = [factor];
  for (const z of zeros) {
    const c = product;
    product = [...c, 0].map((_, i) => (c[i - 1] ?? 0) - z * (c[i] ?? 0));
  }
  return product;
}

describe("polynomial values and slopes, by hand", () => {
  it("evaluates ascending powers", () => {
    expect(evaluatePolynomial([1, -2, 3], 2)).toBe(9);
    expect(evaluatePolynomial([], 2)).toBe(0);
  });

  it("differentiates, a constant to [0]", () => {
    expect(differentiatePolynomial([5, 1, -2, 3])).toEqual([1, -4, 9]);
    expect(differentiatePolynomial([5])).toEqual([0]);
    expect(differentiatePolynomial([])).toEqual([0]);
  });
});

describe("zerosOn, on polynomials built from their zeros", () => {
  it("finds them all, simple ones to 12 digits", () => {
    const zeros = [-3, -0.5, 0.25, 1, 2, 4];
    zerosOn(fromZeros(zeros, -2), -10, 10).forEach((zero, i) => {
      expect(zero).toBeCloseToRelative(zeros[i] ?? Number.NaN, 1e-12);
    });
    expect(zerosOn(fromZeros(zeros), -10, 10)).toHaveLength(6);
  });

  it("counts a touching zero and zeros at the ends once each", () => {
    expect(zerosOn([0, 0, 1], -1, 1)).toEqual([0]);
    const touching = zerosOn(fromZeros([1, 1, 3]), 0, 3);
    expect(touching).toEqual([expect.closeTo(1, 12), 3]);
    expect(zerosOn(fromZeros([0, 2]), 0, 2)).toEqual([0, 2]);
  });

  it("finds a triple zero as one", () => {
    expect(zerosOn(fromZeros([2, 2, 2]), 0, 5)).toEqual([2]);
  });

  it("finds every member of any well-parted set", () => {
    const set = fc.uniqueArray(fc.integer({ min: -12, max: 12 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(set, fc.constantFrom(-3, 0.01, 7), (zeros, factor) => {
        const sorted = [...zeros].sort((a, b) => a - b);
        const found = zerosOn(fromZeros(zeros, factor), -13, 13.5);
        expect(found).toHaveLength(sorted.length);
        found.forEach((zero, i) => {
          expect(Math.abs(zero - (sorted[i] ?? Number.NaN))).toBeLessThan(1e-9);
        });
      }),
    );
  });

  it("refuses the zero polynomial, a wrong interval and NaN", () => {
    expect(() => zerosOn([0, 0], 0, 1)).toThrow(OutOfRangeError);
    expect(() => zerosOn([1, 1], 1, 0)).toThrow(OutOfRangeError);
    expect(() => zerosOn([1, Number.NaN], 0, 1)).toThrow(OutOfRangeError);
    expect(() => zerosOn([1, 1], Number.NaN, 1)).toThrow(OutOfRangeError);
  });
});

describe("firstPositiveZero, on falling and humped curves", () => {
  it("of a parabola is the positive solution of the quadratic formula", () => {
    // −8x² + 0.1x + 0.9 = 0
    const exact = (0.1 + Math.sqrt(0.01 + 4 * 8 * 0.9)) / 16;
    expect(firstPositiveZero([0.9, 0.1, -8])).toBeCloseToRelative(exact, 1e-14);
  });

  it("takes the first of several", () => {
    expect(firstPositiveZero(fromZeros([-1, 0.5, 0.6, 2]))).toBeCloseToRelative(0.5, 1e-13);
  });

  it("takes a zero that is only touched", () => {
    expect(firstPositiveZero(fromZeros([0.3, 0.3]))).toBeCloseToRelative(0.3, 1e-7);
    expect(firstPositiveZero([1, -2, 1])).toBe(1);
  });

  it("leaves out a zero at 0 itself", () => {
    expect(firstPositiveZero([0, 2, -1])).toBe(2);
    expect(firstPositiveZero([0, 0, 3])).toBeNull();
  });

  it("is null where the curve stays above zero, or zero lies beyond the limit", () => {
    expect(firstPositiveZero([1, 0, 1])).toBeNull();
    expect(firstPositiveZero([1])).toBeNull();
    expect(firstPositiveZero([1, -1], 0.99)).toBeNull();
    expect(firstPositiveZero([1, -1], 1)).toBe(1);
  });

  it("finds a zero however small the leading coefficient is", () => {
    expect(firstPositiveZero([1, -1, 1e-280])).toBeCloseToRelative(1, 1e-13);
    expect(firstPositiveZero([1, 0, 0, -1e-30])).toBeCloseToRelative(1e10, 1e-13);
  });

  it("refuses a limit that is no length, and the zero polynomial", () => {
    expect(() => firstPositiveZero([1, -1], 0)).toThrow(OutOfRangeError);
    expect(() => firstPositiveZero([0, 0])).toThrow(OutOfRangeError);
    expect(() => firstPositiveZero([])).toThrow(OutOfRangeError);
  });
});

describe("maximumOn, inside and at the ends", () => {
  const hump = [1, 4, -2]; // top at x = 1, 3 high
  it("finds the top", () => {
    expect(maximumOn(hump, 0, 3)).toEqual({ x: 1, value: 3 });
    expect(maximumOn(hump, 1.5, 2)).toEqual({ x: 1.5, value: 2.5 });
  });

  it("of a constant is its left end", () => {
    expect(maximumOn([2], 0, 3)).toEqual({ x: 0, value: 2 });
  });

  it("refuses a wrong interval", () => {
    expect(() => maximumOn(hump, 2, 1)).toThrow(OutOfRangeError);
    expect(() => maximumOn([1], Number.NaN, 1)).toThrow(OutOfRangeError);
  });

  it("is never below a value inside", () => {
    const coefficient = fc.double({ min: -9, max: 9, noNaN: true });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(coefficient, { minLength: 1, maxLength: 7 }), share, (c, x) => {
        const value = evaluatePolynomial(c, x);
        expect(maximumOn(c, 0, 1).value).toBeGreaterThanOrEqual(value - 1e-12);
      }),
    );
  });
});
