import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { normalQuantile } from "#shared/numeric/normalQuantile.ts";
import { clopperPearson, wilson } from "#shared/numeric/proportion.ts";

const counts = fc
  .integer({ min: 1, max: 60 })
  .chain((n) =>
    fc.tuple(
      fc.integer({ min: 0, max: n }),
      fc.constant(n),
      fc.double({ min: 0.5, max: 0.999, noNaN: true }),
    ),
  );

describe("clopperPearson, against 50-digit binomial sums", () => {
  // Expected values: bisection of binomial sums in mpmath 1.3 at 50 digits.
  it.each([
    [1, 1000000, 0.95, 2.53178076637942e-8, 5.571630655172243e-6],
    [4, 20, 0.9, 0.07135388430861818, 0.40102811733197463],
    [37, 40, 0.5, 0.8756176983061894, 0.9566634379677308],
  ])("%s of %s at confidence %s", (x, n, confidence, lo, hi) => {
    const interval = clopperPearson(x, n, confidence);
    expect(interval[0]).toBeCloseToRelative(lo, 1e-12);
    expect(interval[1]).toBeCloseToRelative(hi, 1e-12);
  });

  it("of none and of all has the closed form 1 − (α/2)^(1/n)", () => {
    const [lo, hi] = clopperPearson(0, 20, 0.95);
    expect(lo).toBe(0);
    expect(hi).toBeCloseToRelative(1 - 0.025 ** (1 / 20), 1e-13);
    expect(clopperPearson(20, 20, 0.95)[0]).toBeCloseToRelative(0.025 ** (1 / 20), 1e-13);
    expect(clopperPearson(20, 20, 0.95)[1]).toBe(1);
  });
});

describe("wilson, by its own equation", () => {
  it("has ends whose distance from the share found is z standard deviations there", () => {
    fc.assert(
      fc.property(counts, ([x, n, confidence]) => {
        const z = -normalQuantile((1 - confidence) / 2);
        for (const p of wilson(x, n, confidence))
          expect(Math.abs((x / n - p) ** 2 - (z * z * p * (1 - p)) / n)).toBeLessThan(1e-14);
      }),
    );
  });

  it("has exact ends where none or all had it", () => {
    expect(wilson(0, 7, 0.9)[0]).toBe(0);
    expect(wilson(7, 7, 0.9)[1]).toBe(1);
  });
});

describe.each([
  ["clopperPearson", clopperPearson],
  ["wilson", wilson],
])("%s, on any counts", (_, interval) => {
  it("holds the share found, and mirrors with it", () => {
    fc.assert(
      fc.property(counts, ([x, n, confidence]) => {
        const [lo, hi] = interval(x, n, confidence);
        const [mirroredLo, mirroredHi] = interval(n - x, n, confidence);
        expect(lo).toBeLessThanOrEqual(x / n);
        expect(hi).toBeGreaterThanOrEqual(x / n);
        expect(Math.abs(lo + mirroredHi - 1)).toBeLessThan(1e-12);
        expect(Math.abs(hi + mirroredLo - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it("widens with confidence", () => {
    const [narrow, wide] = [interval(3, 10, 0.8), interval(3, 10, 0.95)];
    expect(wide[0]).toBeLessThan(narrow[0]);
    expect(wide[1]).toBeGreaterThan(narrow[1]);
  });

  it.each([
    [0, 0, 0.9, "n"],
    [1, 2.5, 0.9, "n"],
    [3, 2, 0.9, "x"],
    [-1, 2, 0.9, "x"],
    [0.5, 2, 0.9, "x"],
    [Number.NaN, 2, 0.9, "x"],
    [1, 2, 0, "confidence"],
    [1, 2, 1, "confidence"],
    [1, 2, Number.NaN, "confidence"],
  ])("refuses %s of %s at %s", (x, n, confidence, quantity) => {
    expect(() => interval(x, n, confidence)).toThrow(OutOfRangeError);
    expect(() => interval(x, n, confidence)).toThrow(expect.objectContaining({ quantity }));
  });
});
