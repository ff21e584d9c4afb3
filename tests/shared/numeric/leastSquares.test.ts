import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NotEnoughDataError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { fitLinear, fitPolynomial } from "#shared/numeric/leastSquares.ts";
import { evaluatePolynomial } from "#shared/numeric/polynomial.ts";

/** Measured values: none so small that its square, or its quotient by a power of two, is no longer a share of it. */
const number = fc.double({ min: -10, max: 10, noNaN: true }).map((v) => (Math.abs(v) < 1e-100 ? 0 : v));
const weight = fc.double({ min: 0.1, max: 10, noNaN: true });
const readings = fc.array(fc.tuple(number, number, number, weight), { minLength: 6, maxLength: 12 });

describe("fitLinear, worked by hand", () => {
  // y = a + bx through (0, 1), (1, 3), (2, 4), (3, 4): x̄ = 1.5, ȳ = 3, Sxx = 5, Sxy = 5, Syy = 6.
  // b = 1, a = 1.5, rss = 6 − 5²/5 = 1, s² = 1/2, var b = s²/Sxx = 0.1, var a = s²(1/4 + 1.5²/5) = 0.35, cov = −x̄·0.1.
  const line = fitLinear({
    design: [
      [1, 0],
      [1, 1],
      [1, 2],
      [1, 3],
    ],
    response: [1, 3, 4, 4],
  });

  it("gives the coefficients and their uncertainty", () => {
    expect(line.coefficients[0]).toBeCloseToRelative(1.5, 1e-15);
    expect(line.coefficients[1]).toBeCloseToRelative(1, 1e-15);
    expect(line.dof).toBe(2);
    expect(line.rss).toBeCloseToRelative(1, 1e-14);
    expect(line.residualSd).toBeCloseToRelative(Math.SQRT1_2, 1e-14);
    expect(line.covariance?.[0][0]).toBeCloseToRelative(0.35, 1e-14);
    expect(line.covariance?.[0][1]).toBeCloseToRelative(-0.15, 1e-14);
    expect(line.covariance?.[1][1]).toBeCloseToRelative(0.1, 1e-14);
    expect(line.standardErrors?.[0]).toBeCloseToRelative(Math.sqrt(0.35), 1e-14);
  });

  it("gives residuals, leverages and R²", () => {
    expect(line.residuals.map((e) => e.toFixed(12))).toEqual([
      "-0.500000000000",
      "0.500000000000",
      "0.500000000000",
      "-0.500000000000",
    ]);
    // h = 1/4 + (x − x̄)²/Sxx
    [0.7, 0.3, 0.3, 0.7].forEach((h, i) => {
      expect(line.leverages[i]).toBeCloseToRelative(h, 1e-14);
    });
    expect(line.fitted[3]).toBeCloseToRelative(4.5, 1e-15);
    expect(line.rSquared).toBeCloseToRelative(5 / 6, 1e-14);
  });

  it("has the condition number of the columns at length 1", () => {
    // cosine between (1, 1, 1, 1) and (0, 1, 2, 3) is 6/√56: κ² = (1 + c)/(1 − c)
    const cosine = 6 / Math.sqrt(56);
    expect(line.conditionNumber).toBeCloseToRelative(Math.sqrt((1 + cosine) / (1 - cosine)), 1e-13);
  });

  it("takes R² about 0 where there is no constant", () => {
    // y = bx: Σxy = 2·1 + 3·2 = 8, Σx² = 5, rss = 13 − 64/5
    const found = fitLinear({ design: [[1], [2]], response: [2, 3] });
    expect(found.rSquared).toBeCloseToRelative(64 / 65, 1e-14);
  });

  it("has R² 0 where the response doesn't vary", () => {
    expect(fitPolynomial([1, 2, 3], [0.1, 0.1, 0.1], 1).rSquared).toBe(0);
    expect(fitLinear({ design: [[1], [2]], response: [0, 0] }).rSquared).toBe(0);
  });
});

describe("fitLinear, weights", () => {
  it("of a mean: weighted mean, its variance by the scatter, leverages w/Σw", () => {
    // mean = (1·1 + 3·5)/4 = 4, rss = 1·9 + 3·1 = 12, dof = 1, var = 12/4
    const found = fitLinear({ design: [[1], [1]], response: [1, 5], weights: [1, 3] });
    expect(found.coefficients[0]).toBeCloseToRelative(4, 1e-15);
    expect(found.covariance?.[0][0]).toBeCloseToRelative(3, 1e-14);
    expect(found.residualSd).toBeCloseToRelative(Math.sqrt(12), 1e-14);
    expect(found.leverages[1]).toBeCloseToRelative(0.75, 1e-14);
  });

  it("times a common factor change nothing but rss and residualSd", () => {
    fc.assert(
      fc.property(readings, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (rows, factor) => {
        const design = rows.map(([a, b], i) => [1, a + i, b - i * i]);
        const response = rows.map(([, , y]) => y);
        const weights = rows.map(([, , , w]) => w);
        const one = fitLinear({ design, response, weights });
        const other = fitLinear({ design, response, weights: weights.map((w) => w * factor) });
        one.coefficients.forEach((c, j) => {
          const size = one.standardErrors?.[j] ?? 0;
          expect(Math.abs(other.coefficients[j] - c)).toBeLessThanOrEqual(1e-9 * (size + Math.abs(c)));
          expect(Math.abs((other.standardErrors?.[j] ?? 0) - size)).toBeLessThanOrEqual(1e-9 * size);
        });
        expect(Math.abs(other.rss - factor * one.rss)).toBeLessThanOrEqual(1e-9 * factor * one.rss);
      }),
    );
  });

  it("of whole numbers act like repeated readings", () => {
    const repeated = fitPolynomial([0, 1, 1, 1, 2, 3, 3], [1, 2, 2, 2, 5, 7, 7], 1);
    const counted = fitPolynomial([0, 1, 2, 3], [1, 2, 5, 7], 1, [1, 3, 1, 2]);
    counted.coefficients.forEach((c, j) => {
      expect(c).toBeCloseToRelative(repeated.coefficients[j], 1e-14);
    });
    expect(counted.rss).toBeCloseToRelative(repeated.rss, 1e-14);
  });

  it("of 0 leave a reading out, of the count as well, and still give its residual", () => {
    const full = fitPolynomial([0, 1, 2, 9], [1, 2, 5, 100], 1, [1, 1, 1, 0]);
    const short = fitPolynomial([0, 1, 2], [1, 2, 5], 1);
    expect(full.coefficients).toEqual(short.coefficients);
    expect(full.dof).toBe(1);
    expect(full.standardErrors).toEqual(short.standardErrors);
    expect(full.leverages[3]).toBe(0);
    expect(full.residuals[3]).toBeCloseToRelative(100 - evaluatePolynomial(short.coefficients, 9), 1e-14);
  });
});

describe("fitLinear, on any readings", () => {
  it("leaves weighted residuals that no column can lessen, leverages that add up to the coefficients", () => {
    fc.assert(
      fc.property(readings, (rows) => {
        const design = rows.map(([a, b], i) => [1, a + i, b - i * i]);
        const found = fitLinear({
          design,
          response: rows.map(([, , y]) => y),
          weights: rows.map(([, , , w]) => w),
        });
        for (const j of [0, 1, 2]) {
          const terms = rows.map(([, , , w], i) => w * found.residuals[i] * design[i][j]);
          const size = rows.reduce((sum, [, , , w], i) => sum + w * 10 * Math.abs(design[i][j]), 0);
          expect(Math.abs(terms.reduce((sum, t) => sum + t, 0))).toBeLessThanOrEqual(1e-13 * size);
        }
        expect(found.leverages.reduce((sum, h) => sum + h, 0)).toBeCloseToRelative(3, 1e-12);
      }),
    );
  });

  it("follows a change of units exactly: columns times factors, coefficients over them", () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: -60, max: 60 }), (rows, power) => {
        const factor = 2 ** power;
        const response = rows.map(([, , y]) => y);
        const one = fitLinear({ design: rows.map(([a, b], i) => [a + i, b - i * i]), response });
        const other = fitLinear({ design: rows.map(([a, b], i) => [factor * (a + i), b - i * i]), response });
        expect(other.coefficients).toEqual([one.coefficients[0] / factor, one.coefficients[1]]);
        expect(other.conditionNumber).toBe(one.conditionNumber);
      }),
    );
  });

  it("has a symmetric covariance with the squared standard errors on its diagonal", () => {
    fc.assert(
      fc.property(readings, (rows) => {
        const { covariance, standardErrors } = fitLinear({
          design: rows.map(([a, b], i) => [a + i, b - i * i]),
          response: rows.map(([, , y]) => y),
        });
        expect(covariance?.[0][1]).toBe(covariance?.[1][0]);
        const diagonal = covariance?.[1][1] ?? Number.NaN;
        expect(Math.abs((standardErrors?.[1] ?? 0) ** 2 - diagonal)).toBeLessThanOrEqual(1e-14 * diagonal);
      }),
    );
  });
});

describe("fitPolynomial, against what is known", () => {
  it("gives back the polynomial its readings were made from, far from 0 and of any degree", () => {
    // whole numbers, so that the readings are exact: 3 − 2x + x² near x = 1000
    const x = [1000, 1001, 1002, 1003, 1004, 1005];
    const found = fitPolynomial(
      x,
      x.map((value) => 3 - 2 * value + value * value),
      2,
    );
    [3, -2, 1].forEach((c, j) => {
      expect(found.coefficients[j]).toBeCloseToRelative(c, 1e-9);
    });
    expect(found.rSquared).toBeCloseToRelative(1, 1e-15);
  });

  it("agrees with fitLinear on the powers as columns", () => {
    const x = [0, 0.05, 0.1, 0.17, 0.2, 0.26, 0.3];
    const y = [0.9, 0.88, 0.83, 0.69, 0.6, 0.37, 0.21];
    const weights = [1, 2, 1, 3, 1, 0.5, 1];
    const one = fitPolynomial(x, y, 2, weights);
    const other = fitLinear({ design: x.map((v) => [1, v, v * v]), response: y, weights });
    one.coefficients.forEach((c, j) => {
      expect(c).toBeCloseToRelative(other.coefficients[j], 1e-12);
      expect(one.standardErrors?.[j]).toBeCloseToRelative(other.standardErrors?.[j] ?? 0, 1e-12);
      one.covariance?.[j].forEach((value, k) => {
        expect(value).toBeCloseToRelative(other.covariance?.[j][k] ?? 0, 1e-11);
      });
      expect(one.leverages[j]).toBeCloseToRelative(other.leverages[j], 1e-12);
    });
  });

  it("of degree 0 is the mean, wherever the places lie", () => {
    const found = fitPolynomial([7, 7, 7], [1, 2, 6], 0);
    expect(found.coefficients).toEqual([3]);
    expect(found.standardErrors?.[0]).toBeCloseToRelative(Math.sqrt(14 / 2 / 3), 1e-14);
  });

  it("through as many points as coefficients has residuals 0 and claims no uncertainty", () => {
    const found = fitPolynomial([1, 2, 4], [3, 1, 5], 2);
    expect(found.residuals.every((e) => Math.abs(e) < 1e-15)).toBe(true);
    expect(found).toMatchObject({ dof: 0, residualSd: 0, standardErrors: null, covariance: null });
  });
});

describe("least squares, data that can't answer", () => {
  it("fewer readings than coefficients: says how many more to measure", () => {
    const short = () => fitLinear({ design: [[1, 2, 3]], response: [1] });
    expect(short).toThrow(NotEnoughDataError);
    expect(short).toThrow(
      /3 coefficients need at least 3 readings, there are 1\. Measure at 2 more settings\./,
    );
    expect(() =>
      fitLinear({
        design: [
          [1, 2],
          [1, 3],
        ],
        response: [1, 2],
        weights: [1, 0],
      }),
    ).toThrow(/there are 1\./);
  });

  it("columns in proportion: names them", () => {
    const design = [0.1, 0.2, 0.3, 0.7].map((v, i) => [v, i * i, 3 * v]);
    expect(() => fitLinear({ design, response: [1, 2, 3, 4] })).toThrow(NotEnoughDataError);
    expect(() => fitLinear({ design, response: [1, 2, 3, 4] })).toThrow(
      /can't tell columns 1, 3 .*independently/,
    );
  });

  it("a column of zeros: names it", () => {
    const design = [
      [1, 0],
      [2, 0],
      [3, 0],
    ];
    expect(() => fitLinear({ design, response: [1, 2, 3] })).toThrow(/Column 2 .* is 0 in every reading/);
  });

  it("too few different places for a polynomial: says how many more", () => {
    expect(() => fitPolynomial([1, 1, 1, 2], [1, 2, 3, 4], 2)).toThrow(NotEnoughDataError);
    expect(() => fitPolynomial([1, 1, 2], [1, 2, 3], 2)).toThrow(
      /3 different places, there are 2\. Measure at 1 more/,
    );
    expect(() => fitPolynomial([1, 2, 3], [1, 2, 3], 2, [1, 0, 1])).toThrow(NotEnoughDataError);
    expect(() => fitPolynomial([], [], 0)).toThrow(NotEnoughDataError);
  });

  it("places that differ by rounding alone: asks for wider ones", () => {
    const x = [0, 1e-17, 1];
    expect(() => fitPolynomial(x, [1, 2, 3], 2)).toThrow(/too close together for a polynomial of degree 2/);
  });

  it.each([
    [
      "a reading that is no number",
      () => fitLinear({ design: [[1], [1]], response: [1, Number.NaN] }),
      "response[1]",
    ],
    [
      "a design that is not finite",
      () => fitLinear({ design: [[1], [Number.POSITIVE_INFINITY]], response: [1, 2] }),
      "design[1][0]",
    ],
    ["a ragged design", () => fitLinear({ design: [[1, 2], [1]], response: [1, 2] }), "length of design[1]"],
    ["an empty design", () => fitLinear({ design: [], response: [] }), "columns of the design"],
    ["more rows than readings", () => fitLinear({ design: [[1], [1]], response: [1] }), "number of rows"],
    [
      "a negative weight",
      () => fitLinear({ design: [[1], [1]], response: [1, 2], weights: [1, -1] }),
      "weights[1]",
    ],
    [
      "too few weights",
      () => fitLinear({ design: [[1], [1]], response: [1, 2], weights: [1] }),
      "number of weights",
    ],
    ["an x that is no number", () => fitPolynomial([1, Number.NaN], [1, 2], 1), "x[1]"],
    ["fewer y than x", () => fitPolynomial([1, 2], [1], 1), "number of y"],
    ["a broken degree", () => fitPolynomial([1, 2], [1, 2], 0.5), "degree"],
  ])("refuses %s and names the place", (_, call, quantity) => {
    expect(call).toThrow(OutOfRangeError);
    expect(call).toThrow(expect.objectContaining({ quantity }));
  });
});
