import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chiSquareQuantile } from "#shared/numeric/chiSquare.ts";
import { NoConvergenceError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { incompleteGamma } from "#shared/numeric/incompleteGamma.ts";
import { normalQuantile } from "#shared/numeric/normalQuantile.ts";
import { solveIncreasing } from "#shared/numeric/solveIncreasing.ts";
import { studentQuantile } from "#shared/numeric/student.ts";

const dofs = fc.double({ min: 1, max: 300, noNaN: true });

describe("studentQuantile, against 50-digit arithmetic", () => {
  // Expected values: mpmath 1.3 at 50 digits, inputs as the doubles written here.
  // The share's last binary digit moves t by up to 2⁻⁵³·p/(t·f(t)) of itself: 1e-12 where p lies near ½ or the dof are few.
  it.each([
    [-0.3, 1, 0.40722642092225764],
    [-40, 3, 1.7190340394579263e-5],
    [-2.5, 7.3, 0.019825117332800235],
    [1.7, 12, 0.9425600673023955],
    [-5, 200, 6.250990638857697e-7],
    [0.01, 1000, 0.5039883590339064],
    [-12, 30, 2.790092707599628e-13],
    [-3, 100000, 0.0013502304420323595],
    [-1e20, 2, 5e-41],
  ])("%s with %s degrees of freedom has a share of %s below it", (t, dof, share) => {
    expect(studentQuantile(share, dof)).toBeCloseToRelative(t, 1e-12);
  });

  it.each([
    [0.975, 3.5, 2.9400886379827287],
    [0.6, 1, 0.32491969623290623],
    [0.501, 8, 0.0025859937565768393],
    [0.9995, 2, 31.599054576445365],
    [1e-30, 4, -41617914.50287813],
    [1e-6, 150, -4.946939810266534],
    [0.25, 1.5, -0.8725946625415706],
    [0.1, 400.5, -1.2836689483771615],
  ])("quantile of %s with %s degrees of freedom", (p, dof, expected) => {
    expect(studentQuantile(p, dof)).toBeCloseToRelative(expected, 5e-14);
  });
});

describe("Student's t, against closed forms", () => {
  it("quantile of 1 degree of freedom is a tangent", () => {
    expect(studentQuantile(0.9, 1)).toBeCloseToRelative(Math.tan(0.4 * Math.PI), 1e-14);
    expect(studentQuantile(1e-100, 1)).toBeCloseToRelative(-1e100 / Math.PI, 1e-13);
  });

  it("tends to the normal distribution as dof grows: z + (z³ + z)/(4ν)", () => {
    const z = normalQuantile(0.975);
    expect(studentQuantile(0.975, 1e7)).toBeCloseToRelative(z + (z ** 3 + z) / 4e7, 1e-13);
  });

  // F(t) = ½ + t/(2√(2 + t²)), solved for t.
  it.each([1e-9, 0.02, 0.4, 0.7, 0.999])("quantile of %s with 2 degrees of freedom is a root", (p) => {
    const t = (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
    expect(studentQuantile(p, 2)).toBeCloseToRelative(t, 1e-13);
  });

  it("quantiles mirror about ½, and grow with the share, for any real dof", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 0.499, noNaN: true }), dofs, (p, dof) => {
        const t = studentQuantile(p, dof);
        expect(studentQuantile(1 - p, dof)).toBeCloseToRelative(-t, 1e-11);
        expect(studentQuantile(1.001 * p, dof)).toBeGreaterThan(t);
      }),
    );
  });

  it("has its middle at 0", () => {
    expect(studentQuantile(0.5, 3)).toBe(0);
  });

  it.each([
    [() => studentQuantile(0, 3), "p"],
    [() => studentQuantile(1, 3), "p"],
    [() => studentQuantile(Number.NaN, 3), "p"],
    [() => studentQuantile(0.9, 0.5), "dof"],
    [() => studentQuantile(0.9, Number.POSITIVE_INFINITY), "dof"],
    [() => chiSquareQuantile(0, 3), "p"],
    [() => chiSquareQuantile(1, 3), "p"],
    [() => chiSquareQuantile(0.5, 0), "dof"],
    [() => chiSquareQuantile(0.5, Number.NaN), "dof"],
  ])("refuses %s and names it", (call, quantity) => {
    expect(call).toThrow(OutOfRangeError);
    expect(call).toThrow(expect.objectContaining({ quantity }));
  });
});

describe("chiSquareQuantile", () => {
  // Expected values: mpmath 1.3 at 50 digits, inputs as the doubles written here.
  it.each([
    [0.95, 1, 3.8414588206941245],
    [0.05, 1, 0.003932140000019523],
    [0.5, 3.3, 2.6625229120421254],
    [0.999, 10, 29.588298445074418],
    [1e-8, 4, 0.0002828560466722577],
    [0.025, 250, 208.09779814500047],
    [0.975, 1000, 1089.5309127749135],
    [1e-100, 2.5, 2.2101150046389035e-80],
  ])("of %s with %s degrees of freedom agrees with 50-digit arithmetic", (p, dof, expected) => {
    expect(chiSquareQuantile(p, dof)).toBeCloseToRelative(expected, 2e-14);
  });

  it("of 1 degree of freedom is a squared normal deviate, of 2 a logarithm", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), (p) => {
        expect(chiSquareQuantile(p, 1)).toBeCloseToRelative(normalQuantile((1 + p) / 2) ** 2, 1e-12);
        expect(chiSquareQuantile(p, 2)).toBeCloseToRelative(-2 * Math.log1p(-p), 1e-13);
      }),
    );
  });

  it("gives back the share, for any real dof", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.5, noNaN: true }), dofs, (p, dof) => {
        expect(incompleteGamma(dof / 2, chiSquareQuantile(p, dof) / 2).lower).toBeCloseToRelative(p, 1e-11);
      }),
    );
  });
});

describe("solveIncreasing, wherever the zero lies", () => {
  it.each([1e-290, 1e-3, 1, 3.7, 1e290])("finds %s from 1 and from itself", (zero) => {
    const f = (x: number): number => Math.log(x / zero);
    expect(solveIncreasing(f, 1)).toBeCloseToRelative(zero, 1e-13);
    expect(solveIncreasing(f, zero)).toBeCloseToRelative(zero, 1e-13);
  });

  it("says so where there is none", () => {
    expect(() => solveIncreasing(() => 1, 1)).toThrow(NoConvergenceError);
    expect(() => solveIncreasing(() => -1, 1)).toThrow(NoConvergenceError);
  });
});
