import { all, type BigNumber, create, type Matrix } from "mathjs";
import { describe, expect, it } from "vitest";
import { fitLinear } from "#shared/numeric/leastSquares.ts";
import { createRandom } from "#shared/numeric/random.ts";

/** mathjs with 80 digits: what is left of its normal equations is right to far more than a double holds. */
const exact = create(all, { number: "BigNumber", precision: 80 });
const big = (values: readonly number[]): BigNumber[] => values.map((value) => exact.bignumber(value));
const plain = (value: unknown): number => Number(String(value));

interface Case {
  readonly design: number[][];
  readonly response: number[];
  readonly weights: number[];
}

/** Powers of a flow far from 0, which depend on each other nearly: the condition number goes up to 1e9. */
function powersOf(seed: number, columns: number, offset: number): Case {
  const random = createRandom(seed);
  const places = Array.from({ length: columns + 4 }, (_, i) => offset + i + 0.5 * random.uniform());
  return {
    design: places.map((x) => Array.from({ length: columns }, (_, j) => x ** j)),
    response: places.map((x) => 5 - 0.3 * x - 0.02 * x * x + 0.05 * (random.uniform() - 0.5)),
    weights: places.map((_, i) => 1 + (i % 3)),
  };
}

/** Coefficients and covariance (XᵀWX)⁻¹ s² by the normal equations, solved in 80 digits. */
function byNormalEquations({ design, response, weights }: Case) {
  const x = exact.matrix(design.map(big));
  const y = exact.matrix(big(response));
  const w = exact.diag(big(weights)) as unknown as Matrix;
  const weighted = exact.multiply(exact.transpose(x), w);
  const normal = exact.multiply(weighted, x);
  const inverse = exact.inv(normal) as Matrix;
  const coefficients = exact.multiply(inverse, exact.multiply(weighted, y)) as Matrix;
  const errors = exact.subtract(y, exact.multiply(x, coefficients)) as Matrix;
  const rss = exact.multiply(errors, exact.multiply(w, errors)) as unknown;
  const spread = plain(rss) / (design.length - design[0].length);
  return {
    coefficients: (coefficients.toArray() as unknown[]).map(plain),
    variances: design[0].map((_, j) => plain(inverse.get([j, j])) * spread),
  };
}

describe("fitLinear against normal equations in 80 digits", () => {
  it.each([
    [1, 2, 0],
    [2, 3, 2],
    [3, 3, 20],
    [4, 4, 10],
    [5, 5, 6],
  ])("seed %i: %i powers from %i on: coefficients to 1e-11, variances to 1e-8", (seed, columns, offset) => {
    const asked = powersOf(seed, columns, offset);
    const fit = fitLinear(asked);
    const outside = byNormalEquations(asked);
    outside.coefficients.forEach((value, j) => {
      expect(fit.coefficients[j]).toBeCloseToRelative(value, 1e-11);
    });
    outside.variances.forEach((value, j) => {
      expect(fit.covariance?.[j][j]).toBeCloseToRelative(value, 1e-8);
    });
  });
});
