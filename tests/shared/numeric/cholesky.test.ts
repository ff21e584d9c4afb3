import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { covarianceRoot } from "#shared/numeric/cholesky.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const product = (columns: readonly Float64Array[], i: number, j: number) =>
  columns.reduce((sum, column) => sum + column[i] * column[j], 0);

describe("covarianceRoot", () => {
  it("of two numbers: a root whose product is their covariance", () => {
    const [first, second] = covarianceRoot("c", [
      [2, -2],
      [-2, 5],
    ]);
    expect(product([first, second], 0, 0)).toBeCloseToRelative(2, 1e-14);
    expect(product([first, second], 0, 1)).toBeCloseToRelative(-2, 1e-14);
    expect(product([first, second], 1, 1)).toBeCloseToRelative(5, 1e-14);
  });

  it("of numbers that follow one another: one column, exactly theirs; a certain number has none", () => {
    const v = [3e-4, 0, -2, 500];
    const columns = covarianceRoot(
      "c",
      v.map((a) => v.map((b) => a * b)),
    );
    expect(columns.length).toBe(1);
    v.forEach((value, i) => {
      expect(columns[0][i]).toBeCloseTo(value, 12);
    });
    expect(covarianceRoot("c", [[0]])).toEqual([]);
  });

  it("of any product A·Aᵀ, units decades apart: gives it back, in no more columns than A has", () => {
    const entries = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(entries, fc.integer({ min: 1, max: 3 }), (a, rank) => {
        const unit = [1e-6, 1, 1e4, 3];
        const at = (i: number, k: number) => a[3 * i + k] * unit[i];
        const c = unit.map((_, i) =>
          unit.map((_, j) =>
            Array.from({ length: rank }, (_, k) => at(i, k) * at(j, k)).reduce((x, y) => x + y, 0),
          ),
        );
        const columns = covarianceRoot("c", c);
        expect(columns.length).toBeLessThanOrEqual(rank);
        c.forEach((row, i) => {
          row.forEach((value, j) => {
            const size = Math.sqrt(c[i][i] * c[j][j]);
            expect(Math.abs(product(columns, i, j) - value)).toBeLessThanOrEqual(2e-5 * size);
          });
        });
      }),
    );
  });

  it.each([
    ["c.1", [[1, 0], [0]]],
    [
      "c.1.0",
      [
        [1, 0.5],
        [0.4, 1],
      ],
    ],
    [
      "c.0.0",
      [
        [-1, 0],
        [0, 1],
      ],
    ],
    [
      "c.0.0",
      [
        [Number.NaN, 0],
        [0, 1],
      ],
    ],
    [
      "c.1.0",
      [
        [1, 2],
        [2, 1],
      ].map((row) => row.map((x) => (x === 2 ? Number.NaN : x))),
    ],
    [
      "c.1.0",
      [
        [1, 1.01],
        [1.01, 1],
      ],
    ],
    [
      "c.2.2",
      [
        [1, 0.9, -0.9],
        [0.9, 1, 0.9],
        [-0.9, 0.9, 1],
      ],
    ],
    [
      "c.1.0",
      [
        [0, 0.1],
        [0.1, 1],
      ],
    ],
  ])("with a wrong %s: throws and names it", (place, matrix) => {
    expectOutOfRange(() => covarianceRoot("c", matrix), place);
  });
});
