import { describe, expect, it } from "vitest";
import { fitLinear, fitPolynomial, type LinearFit } from "#shared/numeric/leastSquares.ts";
import { matchedDigits, type NistLinearSet, readNistLinearSet } from "#tests/support/nistData.ts";

// Source: NIST/ITL Statistical Reference Datasets, linear regression, certified values (15 printed digits); class: found.
// Both the certified values and the data are read from the files in tests/fixtures/nist.
const linear = ({ x, y }: NistLinearSet): LinearFit =>
  fitLinear({ design: x.map((row) => [1, ...row]), response: y });
const polynomial =
  (degree: number) =>
  ({ x, y }: NistLinearSet): LinearFit =>
    fitPolynomial(
      x.map(([value]) => value),
      y,
      degree,
    );

/** name, model, way of fitting it */
const cases: [string, string, (set: NistLinearSet) => LinearFit][] = [
  ["Norris", "a line by columns", linear],
  ["Norris", "a line", polynomial(1)],
  ["Longley", "six columns and a constant", linear],
  ["Wampler1", "a quintic", polynomial(5)],
  ["Wampler2", "a quintic", polynomial(5)],
  ["Wampler4", "a quintic", polynomial(5)],
  ["Wampler5", "a quintic", polynomial(5)],
  ["Filip", "degree 10", polynomial(10)],
];
/** Two fewer than the certified values are printed to. */
const DIGITS = 13;

describe("least squares, on the NIST linear reference sets", () => {
  it.each(cases)("%s, %s: every certified value is matched to 13 digits", (name, _, method) => {
    const set = readNistLinearSet(name);
    const found = method(set);
    const digits = {
      coefficients: matchedDigits(found.coefficients, set.coefficients),
      standardErrors: matchedDigits(found.standardErrors ?? [], set.standardErrors),
      residualSd: matchedDigits([found.residualSd], [set.residualSd]),
      rSquared: matchedDigits([found.rSquared], [set.rSquared]),
      rss: matchedDigits([found.rss], [set.rss]),
    };
    const words = Object.entries(digits).map(([what, value]) => `${what} ${value.toFixed(1)}`);
    console.info(`${name}: ${words.join(", ")} digits`);
    expect(Math.min(...Object.values(digits))).toBeGreaterThanOrEqual(DIGITS);
  });

  it("Wampler5 and Filip, by plain powers as columns: 5 and 7 digits are kept", () => {
    for (const [name, degree, least] of [
      ["Wampler5", 5, 5],
      ["Filip", 10, 7],
    ] as const) {
      const { x, y, coefficients } = readNistLinearSet(name);
      const design = x.map(([value]) => Array.from({ length: degree + 1 }, (_, k) => value ** k));
      const found = fitLinear({ design, response: y });
      const digits = matchedDigits(found.coefficients, coefficients);
      console.info(
        `${name} by plain powers`,
        digits.toFixed(1),
        "condition",
        found.conditionNumber.toExponential(1),
      );
      expect(digits).toBeGreaterThanOrEqual(least);
    }
  });
});
