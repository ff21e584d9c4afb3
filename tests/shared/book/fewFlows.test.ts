import { describe, expect, it } from "vitest";
import type { Book } from "#shared/book/book.ts";
import { buildUncertainty } from "#shared/book/buildUncertainty.ts";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import type { CurveTest } from "#shared/model/tests/curve.ts";
import { predict } from "#shared/physics/predict.ts";
import { isPropeller } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";

const book = demoBook();
const PSI = [0.95, 0.2, -11];
const LAMBDA = [0.03, 0.5, -0.9];
const at = ([a, b, c]: readonly number[], phi: number) => a + b * phi + c * phi * phi;

/** The demo, its rotors known from one noise-free test of the pane crawler's at these flows alone; no pull or leak test. */
function readAt(phis: readonly number[]): Book {
  const build = book.builds.find(({ id }) => id === "pane-crawler")?.data;
  if (!build) throw new Error("the demo has no pane crawler");
  const { diameter } = build;
  const rows = phis.map((phi) => {
    const reading = readingAt({ phi, psi: at(PSI, phi), lambda: at(LAMBDA, phi), diameter, rpm: 24_000 });
    return {
      speed: { value: reading.rpm, unit: "rpm" },
      pressure: { value: reading.pressure, unit: "Pa" },
      flow: { value: reading.flow, unit: "m^3/s" },
      torque: { value: (reading.shaftPower ?? 0) / ((Math.PI * reading.rpm) / 30), unit: "N m" },
      density: { value: 1.2, unit: "kg/m^3" },
    };
  });
  const test: CurveTest = {
    kind: "curve",
    title: "",
    date: "2026-03-01",
    note: "",
    rotor: build.rotor,
    diameter: { value: diameter, unit: "m" },
    motor: null,
    flowFrom: "known-flow",
    instruments: {},
    rows,
  };
  const others = book.tests.filter(({ data }) => !["curve", "pull", "leak"].includes(data.kind));
  return { ...book, tests: [...others, { ...book.tests[0], id: "few", data: test }] };
}

function paneCrawler(changed: Book) {
  const build = changed.builds.find(({ id }) => id === "pane-crawler")?.data;
  if (!build) throw new Error("the demo has no pane crawler");
  const resolved = resolveBuild(changed, build);
  const input = solvable(resolved);
  if (!input || isPropeller(input)) throw new Error("no numbers");
  return { input, uncertainty: buildUncertainty(changed, build, resolved) };
}

const spread = (count: number) => Array.from({ length: count }, (_, i) => (0.29 * i) / (count - 1));

describe("a rotor known from few flows, in a build", () => {
  it.each([3, 4, 5, 6, 7, 9])(
    "%i noise-free readings of a parabola give its pull within 0.5 percent",
    (count) => {
      const { input } = paneCrawler(readAt(spread(count)));
      const truth = predict({ ...input, rotor: { ...input.rotor, psi: PSI, lambda: LAMBDA } });
      expect(predict(input).suction).toBeCloseToRelative(truth.suction, 0.005);
    },
  );

  it("three readings, which leave no residual: ψ by one factor of 30 %, λ by another, marked as assumed", () => {
    const { uncertainty, input } = paneCrawler(readAt(spread(3)));
    for (const [name, curve] of [
      ["psi", input.rotor.psi],
      ["lambda", input.rotor.lambda],
    ] as const) {
      const group = uncertainty.correlated.find(({ paths }) => paths.includes(`rotor.${name}.0`));
      expect(group?.paths).toEqual([0, 1, 2].map((j) => `rotor.${name}.${j}`));
      expect(group?.covariance[0][2]).toBeCloseToRelative(0.09 * curve[0] * curve[2], 1e-9);
      expect(uncertainty.sources[`rotor.${name}.0`]).toEqual({
        from: "estimate",
        what: "few readings of Swept nine",
        test: "curve",
      });
    }
  });

  it("shaft power in three of nine readings: ψ from its fit, λ by a factor of 30 %", () => {
    const changed = readAt(spread(9));
    const test = changed.tests.at(-1);
    if (test?.data.kind !== "curve") throw new Error("no curve test");
    const rows = test.data.rows.map((row, i) => {
      const scattered = { ...row.pressure, value: row.pressure.value * (i % 2 === 0 ? 1.004 : 0.996) };
      return { ...row, pressure: scattered, torque: i % 4 === 0 ? row.torque : undefined };
    });
    const partly = { ...changed.tests[0], id: "few", data: { ...test.data, rows } };
    const { uncertainty, input } = paneCrawler({
      ...changed,
      tests: [...changed.tests.slice(0, -1), partly],
    });
    expect(uncertainty.sources["rotor.psi.0"].from).toBe("fit");
    expect(uncertainty.sources["rotor.lambda.0"].from).toBe("estimate");
    const power = uncertainty.correlated.find(({ paths }) => paths.includes("rotor.lambda.0"));
    expect(power?.paths).toHaveLength(3);
    expect(power?.covariance[0][0]).toBeCloseToRelative(0.09 * input.rotor.lambda[0] ** 2, 1e-9);
  });
});
