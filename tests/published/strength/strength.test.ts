// Staircases: Gorla et al., Int. J. Appl. Eng. Res. 12 (2017) 11306; probit maximum likelihood of the same rows, computed
// once with a reference library: 751 μ 40.81, σ 0.89; 951 μ 36.53, σ 2.11. The paper's own estimates: 751 40.91, 951 (Dixon–Mood) 36.63, s.e. 0.62.
// Counts: Bliss, Ann. Appl. Biol. 22 (1935) 134; probit fit: intercept −34.935, slope 19.728, deviance 10.120.
import { describe, expect, it } from "vitest";
import { fitPull } from "#shared/fit/pullFit.ts";
import { normalCdf } from "#shared/numeric/normal.ts";
import { numberFixture } from "#tests/support/csvFixture.ts";

/** A level that failed lies above the strength, one that survived below it. */
const staircase = (name: string) =>
  numberFixture(`strength/${name}.csv`).map((row) =>
    row.response_1_event === 1 ? { held: 0, letGo: row.level } : { held: row.level, letGo: null },
  );

describe("staircase strength sequences as one-sided brackets", () => {
  it.each([
    { name: "staircase-751", mean: 40.81, sd: 0.89, published: 40.91 },
    { name: "staircase-951", mean: 36.53, sd: 2.11, published: 36.63 },
  ])(
    "$name gives the mean and sd of the probit fit to the printed digits",
    ({ name, mean, sd, published }) => {
      const fit = fitPull({ trials: staircase(name) });
      expect(Math.abs(fit.mean - mean)).toBeLessThanOrEqual(0.005);
      expect(Math.abs(fit.sd - sd)).toBeLessThanOrEqual(0.005);
      expect(Math.abs(fit.mean - published)).toBeLessThan(0.62);
    },
  );
});

describe("Bliss's counts, each trial a one-sided bracket", () => {
  const counts = numberFixture("strength/bliss-1935.csv").map(
    ({ log10_dose: level, n, n_event: events }) => ({
      level,
      events,
      survivors: n - events,
    }),
  );
  const trials = counts.flatMap(({ level, events, survivors }) => [
    ...Array.from({ length: events }, () => ({ held: 0, letGo: level })),
    ...Array.from({ length: survivors }, () => ({ held: level, letGo: null })),
  ]);

  // P(event at x) = Φ((x − mean)/sd): intercept −mean/sd, slope 1/sd.
  it("give the published intercept, slope and deviance of the probit fit to the printed digits", () => {
    const { mean, sd } = fitPull({ trials });
    expect(Math.abs(-mean / sd - -34.935)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(1 / sd - 19.728)).toBeLessThanOrEqual(0.0005);
    const part = (seen: number, of: number, z: number) =>
      seen === 0 ? 0 : 2 * seen * (Math.log(seen / of) - Math.log(normalCdf(z)));
    const deviance = counts.reduce((sum, { level, events, survivors }) => {
      const [z, of] = [(level - mean) / sd, events + survivors];
      return sum + part(events, of, z) + part(survivors, of, -z);
    }, 0);
    expect(Math.abs(deviance - 10.12)).toBeLessThanOrEqual(0.0005);
  });
});
