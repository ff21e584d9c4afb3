import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { incompleteBeta } from "#shared/numeric/incompleteBeta.ts";
import { incompleteGamma } from "#shared/numeric/incompleteGamma.ts";
import { deviance, stirlingError } from "#shared/numeric/saddlePoint.ts";

const shape = fc.double({ min: 0.5, max: 500, noNaN: true });
const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });

/** The exponent that a share is made from is rounded, so digits go as its size. */
const tolerance = (expected: number, least: number): number =>
  least + Number.EPSILON * Math.abs(Math.log(expected));

describe("incompleteGamma, against 50-digit arithmetic", () => {
  // Expected values: mpmath 1.3 at 50 digits, a and x as the doubles written here.
  it.each([
    [0.5, 0.2, 0.4729107431344619, 0.5270892568655381],
    [0.5, 30, 0.9999999999999906, 9.485737571073848e-15],
    [3, 2.9, 0.5540368014428194, 0.4459631985571806],
    [3, 4.1, 0.7761860186992143, 0.2238139813007857],
    [100, 70, 0.00043037259497989087, 0.9995696274050201],
    [100, 135, 0.999292148107214, 0.0007078518927860074],
    [10000, 10150, 0.9326593784960509, 0.06734062150394914],
    [20, 1e-5, 4.110278477616877e-119, 1],
  ])("shape %s up to %s: both tails", (a, x, lower, upper) => {
    const tails = incompleteGamma(a, x);
    expect(tails.lower).toBeCloseToRelative(lower, tolerance(lower, 2e-14));
    expect(tails.upper).toBeCloseToRelative(upper, tolerance(upper, 2e-14));
  });

  it("of shape 1 is the exponential distribution, on both sides of the switch of method", () => {
    for (const x of [1e-9, 0.3, 1.99, 2, 2.01, 40, 700]) {
      expect(incompleteGamma(1, x).lower).toBeCloseToRelative(-Math.expm1(-x), 5e-15);
      expect(incompleteGamma(1, x).upper).toBeCloseToRelative(Math.exp(-x), 5e-14);
    }
  });

  it("steps from shape to shape by its own density: P(a, x) − P(a + 1, x) = xᵃe⁻ˣ/Γ(a + 1)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), fc.double({ min: 0.01, max: 40, noNaN: true }), (a, x) => {
        let step = Math.exp(-x);
        for (let k = 1; k <= a; k += 1) step *= x / k;
        const difference = incompleteGamma(a, x).lower - incompleteGamma(a + 1, x).lower;
        expect(Math.abs(difference - step)).toBeLessThan(3e-15);
      }),
    );
  });

  it("has exact ends and refuses what is no shape or limit", () => {
    expect(incompleteGamma(2, 0)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteGamma(2, Number.POSITIVE_INFINITY)).toEqual({ lower: 1, upper: 0 });
    for (const [a, x] of [
      [0, 1],
      [-1, 1],
      [Number.NaN, 1],
      [1, -1],
      [1, Number.NaN],
    ] as const)
      expect(() => incompleteGamma(a, x)).toThrow(OutOfRangeError);
  });
});

describe("incompleteBeta, against 50-digit arithmetic", () => {
  // Expected values: mpmath 1.3 at 50 digits, a, b and x as the doubles written here.
  it.each([
    [0.5, 0.5, 0.3, 0.36901011956554536, 0.6309898804344546],
    [2, 3, 0.001, 5.992003e-6, 0.999994007997],
    [10, 0.5, 0.9, 0.15164090963470997, 0.84835909036529],
    [50, 70, 0.3, 0.00356613500595697, 0.9964338649940431],
    [50, 70, 0.6, 0.9999739684938264, 2.6031506173620686e-5],
    [1000, 2000, 0.36, 0.9989094969407502, 0.0010905030592498494],
    [0.1, 5, 1e-8, 0.1938859268782, 0.8061140731218001],
    [1000, 0.5, 0.999, 0.15724727426672383, 0.8427527257332762],
    [30, 30, 0.5, 0.5, 0.5],
  ])("shapes %s, %s up to %s: both tails", (a, b, x, lower, upper) => {
    const tails = incompleteBeta(a, b, x);
    expect(tails.lower).toBeCloseToRelative(lower, 1e-13);
    expect(tails.upper).toBeCloseToRelative(upper, 1e-13);
  });

  it("of a whole-number pair is a binomial tail", () => {
    // I(x; a, b) = Σ_{j ≥ a} C(n, j) xʲ(1 − x)ⁿ⁻ʲ, n = a + b − 1
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }), share, (a, b, x) => {
        const n = a + b - 1;
        let term = (1 - x) ** n;
        let tail = 0;
        for (let j = 1; j <= n; j += 1) {
          term *= (((n - j + 1) / j) * x) / (1 - x);
          if (j >= a) tail += term;
        }
        expect(incompleteBeta(a, b, x).lower).toBeCloseToRelative(tail, 1e-12);
      }),
    );
  });

  it("mirrors: lower of a, b at x is upper of b, a at 1 − x", () => {
    fc.assert(
      fc.property(shape, shape, share, (a, b, x) => {
        const y = 1 - x;
        const one = incompleteBeta(a, b, x, y);
        const other = incompleteBeta(b, a, y, x);
        expect(Math.abs(one.lower - other.upper)).toBeLessThanOrEqual(1e-14);
        expect(Math.abs(one.upper - other.lower)).toBeLessThanOrEqual(1e-14);
      }),
    );
  });

  it("takes the complement's digits where x has none left", () => {
    // b = 1: 1 − xᵃ, which is a·y for y ≪ 1
    expect(incompleteBeta(3, 1, 1, 1e-40).upper).toBeCloseToRelative(3e-40, 1e-13);
  });

  it("has exact ends and refuses what is no shape or share", () => {
    expect(incompleteBeta(2, 3, 0)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteBeta(2, 3, 1)).toEqual({ lower: 1, upper: 0 });
    for (const [a, b, x] of [
      [0, 1, 0.5],
      [1, Number.NaN, 0.5],
      [1, 1, -0.1],
      [1, 1, 1.1],
      [1, 1, Number.NaN],
    ] as const)
      expect(() => incompleteBeta(a, b, x)).toThrow(OutOfRangeError);
    expect(() => incompleteBeta(1, 1, 0.5, 2)).toThrow(expect.objectContaining({ quantity: "complement" }));
  });
});

describe("stirlingError and deviance, by definition", () => {
  it("restores factorials", () => {
    let factorial = 1;
    for (let n = 1; n <= 30; n += 1) {
      factorial *= n;
      const stirling = Math.sqrt(2 * Math.PI * n) * (n / Math.E) ** n;
      expect(stirling * Math.exp(stirlingError(n))).toBeCloseToRelative(factorial, 2e-14);
    }
  });

  it("restores Γ(3/2) = √π/2 at one half", () => {
    const stirling = Math.sqrt(Math.PI) * Math.sqrt(0.5 / Math.E);
    expect(stirling * Math.exp(stirlingError(0.5))).toBeCloseToRelative(Math.sqrt(Math.PI) / 2, 1e-15);
  });

  it("is 0 at the mean, half the squared distance over the mean near it, and the same on both sides of the switch", () => {
    expect(deviance(7, 7)).toBe(0);
    expect(deviance(1e6, 1e6 + 1)).toBeCloseToRelative(0.5e-6, 1e-6);
    for (const mean of [0.81, 0.83, 1.21, 1.23])
      expect(deviance(1, mean)).toBeCloseToRelative(-Math.log(mean) + mean - 1, 2e-14);
  });
});
