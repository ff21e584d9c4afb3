import { describe, expect, it } from "vitest";
import type { Bracket } from "#shared/fit/censoredLikelihood.ts";
import { fitDrift } from "#shared/fit/pullDrift.ts";
import { NotEnoughDataError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { normals } from "#tests/support/normals.ts";

const STEP = 0.05;
/** A strength as a load raised in even steps shows it. */
const bracketOf = (strength: number): Bracket => {
  const low = Math.floor(strength / STEP) * STEP;
  return { low, high: low + STEP, count: 1 };
};
const places = (count: number) => Array.from({ length: count }, (_, i) => i / (count - 1));

function made(noise: () => number, slope: number, count = 24): Bracket[] {
  return places(count).map((t) => bracketOf(1 + slope * (t - 0.5) + 0.1 * noise()));
}

describe("fitDrift, over 400 seeded sets of 24 pulls without a drift", () => {
  // Wilks: the ratio follows χ²₁, so a p-value below 0.05 comes in 5 of 100; binomial sd of 400 trials 1.1 %.
  it("calls 5 % of them a drift at p < 0.05, within 3.5 binomial sd", () => {
    const noise = normals(21);
    let called = 0;
    for (let i = 0; i < 400; i++) if (fitDrift(made(noise, 0), places(24)).pValue < 0.05) called += 1;
    expect(Math.abs(called / 400 - 0.05)).toBeLessThan(0.038);
  });
});

describe("fitDrift, with a drift three times the scatter", () => {
  it("finds its slope and is sure of it", () => {
    const { slope, pValue } = fitDrift(made(normals(4), 0.3, 40), places(40));
    expect(Math.abs(slope - 0.3)).toBeLessThan(0.15);
    expect(pValue).toBeLessThan(0.01);
  });
});

describe("fitDrift, on exact readings", () => {
  // Least squares is the maximum of likelihood: slope in closed form, ratio n·ln(RSS₀/RSS₁).
  it("agrees with a straight line by least squares and its likelihood ratio", () => {
    const t = [0, 1, 2, 3, 4, 5];
    const y = [1, 1.3, 1.1, 1.5, 1.4, 1.8];
    const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
    const [tm, ym] = [mean(t), mean(y)];
    const sxy = t.reduce((sum, v, i) => sum + (v - tm) * (y[i] - ym), 0);
    const sxx = t.reduce((sum, v) => sum + (v - tm) ** 2, 0);
    const syy = y.reduce((sum, v) => sum + (v - ym) ** 2, 0);
    const drift = fitDrift(
      y.map((low) => ({ low, high: low, count: 1 })),
      t,
    );
    expect(drift.slope).toBeCloseToRelative(sxy / sxx, 1e-5);
    expect(drift.likelihoodRatio).toBeCloseToRelative(6 * Math.log(syy / (syy - sxy ** 2 / sxx)), 1e-6);
  });
});

describe("fitDrift, the p-value", () => {
  it("is 0.05 at the tabulated χ²₁ of 3.841 and 1 where nothing drifts", () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4: χ², 0.95, ν = 1: 3.841.
    const level = fitDrift(
      [1, 1.2, 1.2, 1].map((low) => ({ low, high: low + 0.1, count: 1 })),
      [0, 1, 2, 3],
    );
    expect(level.pValue).toBeCloseTo(1, 6);
    const { pValue, likelihoodRatio } = fitDrift(made(normals(9), 0.1), places(24));
    expect(pValue < 0.05).toBe(likelihoodRatio > 3.841);
  });

  it.each([
    ["three pulls", [1, 2, 3], NotEnoughDataError],
    ["one voltage", [7, 7, 7, 7], NotEnoughDataError],
    ["a voltage that is none", [7, 8, Number.NaN, 7], OutOfRangeError],
  ])("is refused with %s", (_, against, error) => {
    const brackets = against.map((_each, i) => bracketOf(1 + i / 10));
    expect(() => fitDrift(brackets, against)).toThrow(error);
  });
});
