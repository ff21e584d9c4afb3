import { describe, expect, it } from "vitest";
import {
  type Information,
  informationOf,
  powers,
  sharesOf,
  varianceAt,
  withReadings,
} from "#shared/fit/information.ts";
import { fitPolynomial } from "#shared/numeric/leastSquares.ts";

const places = [0, 0.02, 0.05, 0.06, 0.11, 0.15, 0.19];
const noisy = places.map((x, i) => 1 - 20 * x * x + (i % 2 === 0 ? 0.01 : -0.013));

const curveVariance = (inverse: Information, x: number) => varianceAt(inverse, powers(x, inverse.length));

/** (XᵀX)⁻¹ of a fit through some places, as the least squares give it. */
function inverseOf(
  xs: readonly number[],
  ys: readonly number[],
  degree: number,
  weights?: readonly number[],
) {
  const fit = fitPolynomial(xs, ys, degree, weights);
  const inverse = informationOf({ covariance: fit.covariance ?? [], residualSd: fit.residualSd });
  if (!inverse) throw new Error("no residual left");
  return inverse;
}

describe("varianceAt", () => {
  // Draper & Smith, Applied Regression Analysis, 3rd ed., section 1.4: var ŷ(x)/σ² = 1/n + (x − x̄)²/Σ(xᵢ − x̄)².
  it.each([-0.1, 0, 0.08, 0.3])("at %s of a straight line follows the textbook's closed form", (x) => {
    const mean = places.reduce((sum, each) => sum + each, 0) / places.length;
    const spread = places.reduce((sum, each) => sum + (each - mean) ** 2, 0);
    const expected = 1 / places.length + (x - mean) ** 2 / spread;
    expect(curveVariance(inverseOf(places, noisy, 1), x)).toBeCloseToRelative(expected, 1e-9);
  });
});

describe("withReadings", () => {
  it.each([1, 3])("agrees with a fit that has the readings in it, %s of weight 2 at one place", (count) => {
    const added = withReadings(inverseOf(places, noisy, 3), powers(0.17, 4), count * 2);
    const xs = [...places, ...new Array<number>(count).fill(0.17)];
    const ys = [...noisy, ...new Array<number>(count).fill(0.4)];
    const weights = [...places.map(() => 1), ...new Array<number>(count).fill(2)];
    const whole = inverseOf(xs, ys, 3, weights);
    for (const x of [0, 0.1, 0.2])
      expect(curveVariance(added, x)).toBeCloseToRelative(curveVariance(whole, x), 1e-8);
  });
});

describe("sharesOf", () => {
  it("adds up to one over all tests, and gives each its leverages", () => {
    const inverse = inverseOf(places, noisy, 2);
    const readings = places.map((x, i) => ({ row: powers(x, 3), weight: 1, group: i < 3 ? 0 : 1 }));
    const shares = sharesOf(inverse, readings, 3);
    expect(shares[0] + shares[1]).toBeCloseToRelative(1, 1e-9);
    expect(shares[2]).toBe(0);
    const own = places.slice(0, 3).reduce((sum, x) => sum + curveVariance(inverse, x), 0) / 3;
    expect(shares[0]).toBeCloseToRelative(own, 1e-12);
  });
});

describe("informationOf", () => {
  it("says nothing where the points leave no residual", () => {
    expect(informationOf({ covariance: [], residualSd: 0 })).toBeNull();
    expect(informationOf({ covariance: [[1]], residualSd: 0 })).toBeNull();
  });
});
