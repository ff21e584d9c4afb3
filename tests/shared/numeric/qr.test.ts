import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  applyQ,
  applyTransposedQ,
  factorQr,
  inverseUpperColumns,
  rowLeverages,
  solveTransposedUpper,
  solveUpper,
  upperFactor,
} from "#shared/numeric/qr.ts";
import { scaledConditioning } from "#shared/numeric/singularValues.ts";

const number = fc.double({ min: -10, max: 10, noNaN: true });
/** 5 × 3, by columns, kept away from dependent columns by its diagonal */
const matrix = fc
  .array(number, { minLength: 15, maxLength: 15 })
  .map((values) =>
    Float64Array.from(values, (v, at) => (at % 5 === Math.floor(at / 5) ? v + Math.sign(v + 0.5) * 30 : v)),
  );
const far = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Math.max(...Array.from(a, (value, i) => Math.abs(value - b[i])));

describe("factorQr, on any matrix of full rank", () => {
  it("times R gives the matrix back, and is left unchanged", () => {
    fc.assert(
      fc.property(matrix, (a) => {
        const copy = Float64Array.from(a);
        const qr = factorQr(a, 5, 3);
        const r = upperFactor(qr);
        for (const j of [0, 1, 2]) {
          const column = Float64Array.of(r[0][j], r[1][j], r[2][j], 0, 0);
          applyQ(qr, column);
          expect(far(column, a.subarray(5 * j, 5 * j + 5))).toBeLessThan(1e-12);
        }
        expect(a).toEqual(copy);
      }),
    );
  });

  it("turns without changing lengths, and back again", () => {
    fc.assert(
      fc.property(matrix, fc.array(number, { minLength: 5, maxLength: 5 }), (a, values) => {
        const qr = factorQr(a, 5, 3);
        const b = Float64Array.from(values);
        applyTransposedQ(qr, b);
        expect(Math.abs(Math.hypot(...b) - Math.hypot(...values))).toBeLessThan(1e-12);
        applyQ(qr, b);
        expect(far(b, values)).toBeLessThan(1e-12);
      }),
    );
  });

  it("solves with R, with Rᵀ, and inverts R", () => {
    fc.assert(
      fc.property(matrix, fc.tuple(number, number, number), (a, b) => {
        const qr = factorQr(a, 5, 3);
        const r = upperFactor(qr);
        const times = (x: ArrayLike<number>) => r.map((row) => row.reduce((sum, v, j) => sum + v * x[j], 0));
        const transposed = (x: ArrayLike<number>) =>
          r.map((_, j) => r.reduce((sum, row, i) => sum + row[j] * x[i], 0));
        const x = Float64Array.from(b);
        solveUpper(qr, x);
        expect(far(times(x), b)).toBeLessThan(1e-11);
        const y = Float64Array.from(b);
        solveTransposedUpper(qr, y);
        expect(far(transposed(y), b)).toBeLessThan(1e-11);
        expect(far(times(inverseUpperColumns(qr)[1]), [0, 1, 0])).toBeLessThan(1e-11);
      }),
    );
  });

  it("has leverages between 0 and 1 that add up to the columns", () => {
    fc.assert(
      fc.property(matrix, (a) => {
        const leverages = rowLeverages(factorQr(a, 5, 3));
        expect(Math.min(...leverages)).toBeGreaterThanOrEqual(0);
        expect(Math.max(...leverages)).toBeLessThanOrEqual(1 + 1e-14);
        expect(leverages.reduce((sum, h) => sum + h, 0)).toBeCloseToRelative(3, 1e-13);
      }),
    );
  });

  it("leaves a 0 on the diagonal for a column of zeros", () => {
    expect(upperFactor(factorQr(Float64Array.of(1, 2, 0, 0), 2, 2))[1][1]).toBe(0);
  });
});

describe("scaledConditioning, against closed forms", () => {
  // two unit columns at an angle: σ² = 1 ± cos, whatever their lengths
  it.each([0.1, 0.9, 0.999999, -0.5])("of two columns with cosine %s is √((1+|c|)/(1−|c|))", (c) => {
    const { conditionNumber, weakest } = scaledConditioning([
      [1, 1e6 * c],
      [0, 1e6 * Math.sqrt(1 - c * c)],
    ]);
    expect(conditionNumber).toBeCloseToRelative(Math.sqrt((1 + Math.abs(c)) / (1 - Math.abs(c))), 1e-9);
    expect(Math.abs(weakest[0])).toBeCloseToRelative(Math.SQRT1_2, 1e-9);
    expect(Math.sign(weakest[0] * weakest[1])).toBe(-Math.sign(c));
  });

  it("of columns at right angles is 1, of a column of zeros Infinity", () => {
    expect(
      scaledConditioning([
        [3, 0, 0],
        [0, 1e-9, 0],
        [0, 0, 7],
      ]).conditionNumber,
    ).toBe(1);
    expect(
      scaledConditioning([
        [1, 0],
        [1, 0],
      ]),
    ).toEqual({ conditionNumber: Number.POSITIVE_INFINITY, weakest: [0, 1] });
  });

  // The Hilbert matrix of order 4 has a known inverse in whole numbers, and ‖A‖_F‖A⁻¹‖_F/4 ≤ κ ≤ ‖A‖_F‖A⁻¹‖_F.
  it("of a Hilbert matrix lies within the bounds that its whole-number inverse gives", () => {
    const hilbert = [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => 1 / (i + j + 1)));
    const inverse = [
      [16, -120, 240, -140],
      [-120, 1200, -2700, 1680],
      [240, -2700, 6480, -4200],
      [-140, 1680, -4200, 2800],
    ];
    const lengths = [0, 1, 2, 3].map((j) => Math.hypot(...hilbert.map((row) => row[j])));
    const frobenius = 2 * Math.hypot(...inverse.flatMap((row, i) => row.map((v) => v * lengths[i])));
    const { conditionNumber } = scaledConditioning(hilbert);
    expect(conditionNumber).toBeLessThanOrEqual(frobenius);
    expect(conditionNumber).toBeGreaterThanOrEqual(frobenius / 4);
  });
});
