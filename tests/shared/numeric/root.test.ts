import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NoConvergenceError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { findRoot } from "#shared/numeric/root.ts";

describe("findRoot, on equations with a known answer", () => {
  // Exact roots, by definition of the functions.
  const cases: [string, (x: number) => number, number, number, number][] = [
    ["x² = 2", (x) => x * x - 2, 0, 2, Math.SQRT2],
    ["cos x = 0", Math.cos, 1, 2, Math.PI / 2],
    ["eˣ = 1e-200", (x) => Math.exp(x) - 1e-200, -1000, 0, -200 * Math.LN10],
    ["x⁹ = 1e-9, flat", (x) => x ** 9 - 1e-9, 0, 10, 0.1],
    ["a jump", (x) => (x < 1 / 3 ? -1 : 1), 0, 1, 1 / 3],
    ["a root 250 decades below its bracket", (x) => x - 1e-250 + x ** 3, 0, 5, 1e-250],
    ["the same on both sides of 0", (x) => Math.atan(1e250 * x - 1), -3, 5, 1e-250],
    ["six hundred decades, ln x = 1", (x) => Math.log(x) - 1, 1e-300, 1e300, Math.E],
  ];
  it.each(cases)("%s is met to 14 digits", (_, f, lo, hi, exact) => {
    const { root, converged, iterations } = findRoot(f, lo, hi);
    expect(root).toBeCloseToRelative(exact, 2e-14);
    expect(converged).toBe(true);
    expect(iterations).toBeLessThan(130);
  });

  it("needs few evaluations where the function is smooth", () => {
    expect(findRoot((x) => x ** 3 - 2 * x - 5, 2, 3).iterations).toBeLessThanOrEqual(10);
  });

  it("returns an end that is itself the root, in no evaluation", () => {
    expect(findRoot((x) => x, 0, 3)).toEqual({ root: 0, converged: true, iterations: 0 });
    expect(findRoot((x) => x - 3, 0, 3).root).toBe(3);
  });

  it("ends at a root at zero, which no relative tolerance can meet", () => {
    expect(Math.abs(findRoot((x) => x ** 3, -1, 2.1).root)).toBeLessThan(1e-100);
  });

  it("ends at a root at zero from every bracket about it, in few evaluations", () => {
    const end = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(end, end, end, fc.constantFrom(0, 1), (lo, hi, slope, shape) => {
        const f = (x: number): number => (shape === 0 ? x ** 3 + slope * x : Math.expm1(slope * x));
        const { root, iterations } = findRoot(f, -lo, Math.min(hi, 600 / slope));
        expect(Math.abs(root)).toBeLessThan(1e-290);
        expect(iterations).toBeLessThan(130);
      }),
    );
  });

  it("gives back y from f(y), for any increasing cubic", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 9, noNaN: true }),
        (y, a) => {
          const f = (x: number) => x ** 3 + a * x;
          const { root } = findRoot((x) => f(x) - f(y), -60, 70);
          expect(Math.abs(root - y)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(y)));
        },
      ),
    );
  });

  it("takes infinite values by their sign", () => {
    expect(findRoot((x) => 1 / (x - 1) - 1, 1, 5).root).toBeCloseToRelative(2, 1e-13);
  });
});

describe("findRoot, on what is no bracket", () => {
  it("refuses ends of one sign, and names the value", () => {
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow(OutOfRangeError);
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow(/f\(hi\) is 2/);
  });

  it.each([
    [2, 1],
    [1, 1],
    [0, Number.NaN],
    [Number.NaN, 1],
    [0, Number.POSITIVE_INFINITY],
  ])("refuses the interval %s to %s", (lo, hi) => {
    expect(() => findRoot((x) => x - 0.5, lo, hi)).toThrow(OutOfRangeError);
  });

  it("stops on NaN, at an end and inside", () => {
    expect(() => findRoot(Math.sqrt, -1, 1)).toThrow(NoConvergenceError);
    expect(() => findRoot((x) => (Math.abs(x - 0.5) < 0.4 ? Number.NaN : x - 0.5), 0, 1)).toThrow(
      NoConvergenceError,
    );
  });

  it("says so when the evaluations are used up", () => {
    expect(() => findRoot((x) => x ** 3 - 2, 0, 9, { maxIterations: 3 })).toThrow(/within 3 evaluations/);
  });
});
