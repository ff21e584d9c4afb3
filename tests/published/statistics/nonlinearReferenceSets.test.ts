import { describe, expect, it } from "vitest";
import { fitNonlinear } from "#shared/numeric/levenbergMarquardt.ts";
import { matchedDigits } from "#tests/support/nistData.ts";
import { readNistNonlinearSet } from "#tests/support/nistNonlinearData.ts";

type Model = (b: readonly number[], x: number) => number;

// Source: NIST/ITL Statistical Reference Datasets, nonlinear regression; certified values (11 printed digits) and models as stated
// in the files of tests/fixtures/nist; class: found.
const rational: Model = ([b1, b2, b3, b4, b5, b6, b7], x) =>
  (b1 + b2 * x + b3 * x ** 2 + b4 * x ** 3) / (1 + b5 * x + b6 * x ** 2 + b7 * x ** 3);
const models: [string, Model][] = [
  ["Misra1a", ([b1, b2], x) => b1 * (1 - Math.exp(-b2 * x))],
  ["Thurber", rational],
  ["MGH09", ([b1, b2, b3, b4], x) => (b1 * (x ** 2 + x * b2)) / (x ** 2 + x * b3 + b4)],
  ["Rat43", ([b1, b2, b3, b4], x) => b1 / (1 + Math.exp(b2 - b3 * x)) ** (1 / b4)],
  ["Hahn1", rational],
];
/** Eleven digits are printed; the derivatives are differences in double precision. */
const DIGITS = { coefficients: 10, standardErrors: 8, residualSd: 10, rss: 10 };

describe("fitNonlinear, on the NIST nonlinear reference sets", () => {
  it.each(models.flatMap(([name, model]) => [1, 2].map((start) => [name, start, model] as const)))(
    "%s from start %i: ten digits of the certified coefficients are matched",
    (name, start, model) => {
      const set = readNistNonlinearSet(name);
      const fit = fitNonlinear({
        residuals: (b) => set.x.map((x, i) => model(b, x) - set.y[i]),
        start: set.starts[start - 1],
      });
      const digits = {
        coefficients: matchedDigits(fit.coefficients, set.coefficients),
        standardErrors: matchedDigits(fit.standardErrors ?? [], set.standardErrors),
        residualSd: matchedDigits([fit.residualSd], [set.residualSd]),
        rss: matchedDigits([fit.rss], [set.rss]),
      };
      const words = Object.entries(digits).map(([what, value]) => `${what} ${value.toFixed(1)}`);
      console.info(`${name} from start ${start}: ${words.join(", ")} digits, ${fit.iterations} steps`);
      expect(fit.converged).toBe(true);
      expect(digits.coefficients).toBeGreaterThanOrEqual(DIGITS.coefficients);
      expect(digits.standardErrors).toBeGreaterThanOrEqual(DIGITS.standardErrors);
      expect(digits.residualSd).toBeGreaterThanOrEqual(DIGITS.residualSd);
      expect(digits.rss).toBeGreaterThanOrEqual(DIGITS.rss);
    },
  );
});
