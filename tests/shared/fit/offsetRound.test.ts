import { describe, expect, it } from "vitest";
import { offsetRound } from "#shared/fit/offsetRound.ts";
import { type RotorPoint, rotorPoints } from "#shared/fit/rotorPoints.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { fitLinear } from "#shared/numeric/leastSquares.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";

const PSI = [1, -0.5, -16];
const PHIS = [0, 0.04, 0.08, 0.12, 0.16, 0.2];

function scattered(tests: number): RotorPoint[] {
  const random = createRandom(5);
  const points = Array.from({ length: tests }, (_, test) =>
    PHIS.map((phi) => {
      const psi = PSI[0] + PSI[1] * phi + PSI[2] * phi ** 2 + 0.02 * (random.uniform() - 0.5);
      return { ...readingAt({ phi, psi, rpm: 15_000 + 900 * test }), test, weight: 1 + (test % 3) };
    }),
  );
  return rotorPoints(0.05, points.flat());
}

/** The same round written out anew: a column for every test, all solved at once. */
function atOnce(points: readonly RotorPoint[], tests: number) {
  const design = points.map(({ phi, test }) => {
    const value = PSI.reduce((sum, c, j) => sum + c * phi ** j, 0);
    const slope = PSI.reduce((sum, c, j) => sum + j * c * phi ** Math.max(0, j - 1), 0);
    const own = Array.from({ length: tests - 1 }, (_, k) => (k + 1 === test ? phi * slope - 2 * value : 0));
    return [...PSI.map((_, j) => phi ** j), ...own];
  });
  const response = points.map(({ psi }) => psi);
  return fitLinear({ design, response, weights: points.map(({ weight }) => weight) });
}

describe("offsetRound", () => {
  it.each([2, 3, 12])("of %i tests: the curve, offsets and covariance of all columns at once", (count) => {
    const points = scattered(count);
    const tests = Array.from({ length: count }, (_, k) => k);
    const { psi, steps, covariance, residualSd } = offsetRound(points, tests, PSI);
    const whole = atOnce(points, count);
    psi.forEach((c, j) => {
      expect(c).toBeCloseToRelative(whole.coefficients[j], 1e-10);
    });
    expect(residualSd).toBeCloseToRelative(whole.residualSd, 1e-12);
    expect([steps[0], covariance[0][0]]).toEqual([0, 0]);
    for (let k = 1; k < count; k += 1) {
      expect(steps[k]).toBeCloseToRelative(whole.coefficients[PSI.length + k - 1], 1e-9);
      for (let m = 1; m < count; m += 1) {
        const own = whole.covariance?.[PSI.length + k - 1][PSI.length + m - 1] ?? 0;
        expect(covariance[k][m]).toBeCloseToRelative(own, 1e-9);
      }
    }
  });

  it("of as many points as there are numbers to find, or a test whose points all weigh nothing: refused", () => {
    const points = scattered(2);
    expect(() => offsetRound(points.slice(4, 8), [0, 1], PSI)).toThrow(NotEnoughDataError);
    const weightless = points.map((point) => (point.test === 1 ? { ...point, weight: 0 } : point));
    expect(() => offsetRound(weightless, [0, 1], PSI)).toThrow(NotEnoughDataError);
  });
});
