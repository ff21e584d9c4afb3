import { describe, expect, it } from "vitest";
import { informationOf, powers } from "#shared/fit/information.ts";
import { type MissingQuestion, missingReadings } from "#shared/fit/missingReadings.ts";
import { fitPolynomial } from "#shared/numeric/leastSquares.ts";
import { studentQuantile } from "#shared/numeric/student.ts";

const quantile = (dof: number) => studentQuantile(0.975, dof);
const wiggle = (i: number) => (i % 2 === 0 ? 0.01 : -0.012);

function question(xs: readonly number[], degree: number, range: [number, number]): MissingQuestion {
  const fit = fitPolynomial(
    xs,
    xs.map((x, i) => 1 - x + wiggle(i)),
    degree,
  );
  const inverse = informationOf({ covariance: fit.covariance ?? [], residualSd: fit.residualSd });
  if (!inverse) throw new Error("no residual left");
  return {
    inverse,
    row: (x) => powers(x, degree + 1),
    dof: fit.dof,
    weight: () => 1,
    from: range[0],
    to: range[1],
    quantile,
  };
}

/** Largest half-width of a straight line's band over a range, in the closed form of Draper & Smith, section 1.4. */
function lineBand(xs: readonly number[], range: [number, number]): number {
  const mean = xs.reduce((sum, x) => sum + x, 0) / xs.length;
  const spread = xs.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  const at = (x: number) => quantile(xs.length - 2) * Math.sqrt(1 / xs.length + (x - mean) ** 2 / spread);
  return Math.max(at(range[0]), at(range[1]));
}

describe("missingReadings", () => {
  it("asks for the design row and the weight of a place once, however many counts it is tried with", () => {
    const asked: number[] = [];
    const weighed: number[] = [];
    const plain = question([0, 0.05, 0.1, 0.15, 0.2], 1, [0, 1]);
    const found = missingReadings({
      ...plain,
      row: (x) => {
        asked.push(x);
        return plain.row(x);
      },
      weight: (x) => {
        weighed.push(x);
        return 1;
      },
    });
    expect(found).toEqual(missingReadings(plain));
    expect(new Set(asked).size).toBe(asked.length);
    expect(weighed).toEqual(asked);
  });

  it("asks for readings at the far end, for a straight line known near zero only, and says what they do", () => {
    const xs = [0, 0.05, 0.1, 0.15, 0.2];
    const found = missingReadings(question(xs, 1, [0, 1]));
    if (!found) throw new Error("nothing found");
    expect(found.widest).toBe(1);
    expect(found.best).toBeGreaterThan(0.7);
    expect(found.shrinks).toBeLessThanOrEqual(0.5);
    const added = new Array<number>(found.count).fill(found.best);
    const expected = lineBand([...xs, ...added], [0, 1]) / lineBand(xs, [0, 1]);
    expect(found.shrinks).toBeCloseToRelative(expected, 1e-6);
  });

  it("takes the least number that halves the band", () => {
    const xs = [0, 0.05, 0.1, 0.15, 0.2];
    const found = missingReadings(question(xs, 1, [0, 1]));
    const fewer = Array.from({ length: 101 }, (_, i) => i / 100).map((place) => {
      const added = new Array<number>((found?.count ?? 0) - 1).fill(place);
      return lineBand([...xs, ...added], [0, 1]) / lineBand(xs, [0, 1]);
    });
    expect(Math.min(...fewer)).toBeGreaterThan(0.5);
  });

  it("asks for readings in the hole, for a cubic without readings in the middle", () => {
    const found = missingReadings(question([0, 0.05, 0.1, 0.15, 0.9, 0.95, 1], 3, [0, 1]));
    expect(found?.widest).toBeGreaterThan(0.3);
    expect(found?.from).toBeGreaterThan(0.15);
    expect(found?.to).toBeLessThan(0.9);
  });

  it("asks for none, where a hundred readings lie evenly over the curve", () => {
    const xs = Array.from({ length: 100 }, (_, i) => i / 99);
    expect(missingReadings(question(xs, 1, [0, 1]))).toBeNull();
  });

  it.each([
    ["above", (x: number) => (x > 0.5 ? 1e-4 : 1), 0, 0.5],
    ["below", (x: number) => (x < 0.5 ? 1e-4 : 1), 0.5, 1],
  ])("asks for readings where they are precise, when those %s the middle are not", (_, weight, from, to) => {
    const found = missingReadings({ ...question([0, 0.25, 0.5, 0.75, 1], 1, [0, 1]), weight });
    expect(found?.best).toBeGreaterThanOrEqual(from);
    expect(found?.best).toBeLessThanOrEqual(to);
  });
});
