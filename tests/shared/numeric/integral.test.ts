import { describe, expect, it } from "vitest";
import { NoConvergenceError } from "#shared/numeric/errors.ts";
import { integral } from "#shared/numeric/integral.ts";

describe("integral", () => {
  it("of a polynomial of the ninth degree: exact", () => {
    expect(integral((x) => 10 * x ** 9 - 3 * x ** 2, 0, 2)).toBeCloseToRelative(2 ** 10 - 2 ** 3, 1e-13);
  });

  it.each([
    [Math.exp, 0, 1, Math.E - 1],
    [Math.sin, 0, Math.PI, 2],
    [(x: number) => 1 / (1 + x * x), 0, 1, Math.PI / 4],
    [(x: number) => 1 / x, 1, 1000, Math.log(1000)],
  ] as const)("of %s: the textbook's value", (f, from, to, expected) => {
    expect(integral(f, from, to)).toBeCloseToRelative(expected, 1e-10);
  });

  it("of nothing: 0; over a pole or of no number: refused", () => {
    expect(integral(() => 0, 0, 1)).toBe(0);
    expect(() => integral((x) => 1 / x, 0, 1)).toThrow(NoConvergenceError);
    expect(() => integral(() => Number.NaN, 0, 1)).toThrow(NoConvergenceError);
  });
});
