import { describe, expect, it } from "vitest";
import { correlatedInput } from "#shared/decide/correlated.ts";
import { uncertainInputs } from "#shared/decide/uncertainInput.ts";
import { TOGETHER, uncertaintyOf } from "#shared/decide/uncertainty.ts";
import { scrambledSobol } from "#shared/numeric/sobol.ts";
import { predict } from "#shared/physics/predict.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { PANE_CRAWLER } from "#tests/support/paneCrawler.ts";

const crawler = {
  ...PANE_CRAWLER,
  pack: { series: 2, parallel: 1, openCircuitVoltage: 3.8, cellResistance: 0.026, wireResistance: 0.014 },
  vehicle: { ...PANE_CRAWLER.vehicle, mass: 0.9 },
};
const CEILING = 2;

/** Values that a group writes, by sample. */
function valuesOf(input: object, paths: string[], covariance: number[][], count = 4096): number[][] {
  const copy = structuredClone(input) as Record<string, number>;
  const group = correlatedInput(copy, { paths, covariance }, "g");
  const uniforms = scrambledSobol(count, group.dimensions, 3);
  const independent = new Float64Array(group.dimensions);
  return Array.from({ length: count }, (_, i) => {
    group.write(uniforms, i * group.dimensions, independent);
    return paths.map((path) => copy[path]);
  });
}

const mean = (values: number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
const covarianceOf = (a: number[], b: number[]) =>
  mean(a.map((value, i) => (value - mean(a)) * (b[i] - mean(b))));

describe("correlatedInput", () => {
  const input = { x: 10, y: 30, z: 5 };
  const covariance = [
    [0.04, -0.018, 0.002],
    [-0.018, 0.09, 0.01],
    [0.002, 0.01, 0.01],
  ];

  it("far from every limit: the samples have the means and the covariance that were stated", () => {
    const values = valuesOf({ x: 10, y: 30, z: 5 }, ["x", "y", "z"], covariance);
    const columns = [0, 1, 2].map((j) => values.map((row) => row[j]));
    [10, 30, 5].forEach((middle, j) => {
      expect(mean(columns[j])).toBeCloseToRelative(middle, 1e-5);
    });
    covariance.forEach((row, i) => {
      row.forEach((value, j) => {
        const size = Math.sqrt(covariance[i][i] * covariance[j][j]);
        expect(Math.abs(covarianceOf(columns[i], columns[j]) - value)).toBeLessThan(0.01 * size);
      });
    });
  });

  // Variance of a sum: u² = u₁² + u₂² + 2·u₁₂ (JCGM 100:2008, 5.2.2), the difference with the minus sign.
  it("of two: sum and difference have the variances of the textbook", () => {
    const values = valuesOf(
      { x: 10, y: 30 },
      ["x", "y"],
      [
        [0.04, -0.018],
        [-0.018, 0.09],
      ],
    );
    const sums = values.map(([x, y]) => x + y);
    const differences = values.map(([x, y]) => x - y);
    expect(covarianceOf(sums, sums)).toBeCloseToRelative(0.04 + 0.09 - 2 * 0.018, 0.01);
    expect(covarianceOf(differences, differences)).toBeCloseToRelative(0.04 + 0.09 + 2 * 0.018, 0.01);
  });

  // Φ⁻¹(0.75) = 0.674490 (normal table): the median of a normal distribution cut at its mean, as for a number by itself.
  it("at a limit: each keeps the distribution of a number cut there by itself, and their order is kept", () => {
    const values = valuesOf(
      { x: 1e-12, y: 30 },
      ["x", "y"],
      [
        [4, 1.9],
        [1.9, 1],
      ],
    );
    const xs = values.map(([x]) => x).sort((a, b) => a - b);
    expect(xs[0]).toBeGreaterThan(0);
    expect(xs[xs.length / 2]).toBeCloseToRelative(2 * 0.67449, 0.005);
    const correlation = (a: number[], b: number[]) =>
      covarianceOf(a, b) / Math.sqrt(covarianceOf(a, a) * covarianceOf(b, b));
    const columns = [0, 1].map((j) => values.map((row) => row[j]));
    expect(correlation(columns[0], columns[1])).toBeGreaterThan(0.8);
  });

  it("all by one factor: in proportion in every sample, also where the factor is cut", () => {
    const c = [2, 6, 3];
    const values = valuesOf(
      { x: 2, y: 6, z: 3 },
      ["x", "y", "z"],
      c.map((a) => c.map((b) => a * b)),
    );
    for (const [x, y, z] of values) {
      expect(x).toBeGreaterThan(0);
      expect(y).toBeCloseToRelative(3 * x, 1e-9);
      expect(z).toBeCloseToRelative(1.5 * x, 1e-9);
    }
  });

  it.each([
    [
      "correlated.0.paths.1",
      {
        paths: ["x", "q"],
        covariance: [
          [1, 0],
          [0, 1],
        ],
      },
    ],
    ["correlated.0.covariance", { paths: ["x", "y"], covariance: [[1]] }],
    ["correlated.0.covariance", { paths: [], covariance: [] }],
    [
      "correlated.0.covariance.1.0",
      {
        paths: ["x", "y"],
        covariance: [
          [1, 2],
          [2, 1],
        ],
      },
    ],
    [
      "correlated.0.paths.1",
      {
        paths: ["x", "x"],
        covariance: [
          [1, 0],
          [0, 1],
        ],
      },
    ],
    ["correlated.0.paths.0", { paths: ["z"], covariance: [[1]] }],
  ])("with a wrong %s: throws and names it", (place, group) => {
    expectOutOfRange(
      () => uncertainInputs({ ...input }, { uncertainty: { z: 1 }, correlated: [group] }),
      place,
    );
  });
});

describe("doubtOf, with numbers that are uncertain together", () => {
  const [u, v] = [0.03 * crawler.motor.kv, 0.08 * crawler.motor.resistance];
  const together = (correlation: number) =>
    uncertaintyOf(crawler, {
      uncertainty: {},
      correlated: [
        {
          paths: ["motor.kv", "motor.resistance"],
          covariance: [
            [u * u, correlation * u * v],
            [correlation * u * v, v * v],
          ],
        },
      ],
    });
  const width = ({ attitudes }: ReturnType<typeof uncertaintyOf>) => {
    const { p5, p95 } = attitudes[CEILING].driving;
    return (p95 ?? Number.NaN) - (p5 ?? Number.NaN);
  };

  it("of a motor whose K_v and R_m rise together, as in a fit at one load: less uncertainty than of the two by themselves", () => {
    const apart = uncertaintyOf(crawler, { uncertainty: { "motor.kv": u, "motor.resistance": v } });
    expect(width(together(0.97))).toBeLessThan(0.85 * width(apart));
    expect(width(together(-0.97))).toBeGreaterThan(1.1 * width(apart));
    expect(width(together(0))).toBeCloseToRelative(width(apart), 0.02);
  });

  // First order (JCGM 100:2008, equation 13): u² = Σ Σ gᵢ·gⱼ·u(xᵢ, xⱼ), the slopes gᵢ by differences; z₉₅ − z₅ = 3.28971 (normal table).
  it.each([0.9, 0, -0.5])(
    "at a correlation of %s: the spread is that of the law of propagation",
    (correlation) => {
      const at = (kv: number, resistance: number) =>
        predict({ ...crawler, motor: { ...crawler.motor, kv, resistance } }).attitudes[CEILING].driving
          .margin ?? 0;
      const { kv, resistance } = crawler.motor;
      const byKv = at(kv + u / 2, resistance) - at(kv - u / 2, resistance);
      const byR = at(kv, resistance + v / 2) - at(kv, resistance - v / 2);
      const sd = Math.sqrt(byKv ** 2 + byR ** 2 + 2 * correlation * byKv * byR);
      expect(width(together(correlation))).toBeCloseToRelative(3.28971 * sd, 0.02);
    },
  );

  it("a group has one share, under the names of all its paths; together with a number by itself no more than 1", () => {
    const { shares } = uncertaintyOf(crawler, {
      uncertainty: { "vehicle.mass": 0.02 },
      correlated: [
        {
          paths: ["rotor.psi.0", "rotor.psi.1"],
          covariance: [
            [9e-4, -4e-3],
            [-4e-3, 4e-2],
          ],
        },
      ],
    });
    expect(shares.map(({ path }) => path).sort()).toEqual(
      ["vehicle.mass", `rotor.psi.0${TOGETHER}rotor.psi.1`].sort(),
    );
    const sum = shares.reduce((total, { share }) => total + share, 0);
    expect(sum).toBeGreaterThan(0.98);
    expect(sum).toBeLessThanOrEqual(1);
  });
});
