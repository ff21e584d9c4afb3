// Expected values: computed once with SciPy 1.17.1, a library outside the project: maximum of the censored likelihood
// (scipy.stats.norm.logcdf/logsf/cdf, optimize.minimize), profile intervals by optimize.brentq at χ²(0.95, 1)/2;
// scipy.stats.norm.fit of the same rows as CensoredData agrees to its own five digits. The rows are made up.
import { describe, expect, it } from "vitest";
import { fitPull } from "#shared/fit/pullFit.ts";

const brackets = [
  [7.5, 8],
  [8, 8.5],
  [8.5, 9],
  [8.5, 9],
  [9, 9.5],
  [7, 8],
  [9.5, 10.5],
].map(([held, letGo]) => ({ held, letGo }));
const trials = [...brackets, { held: 0, letGo: 8.2 }, { held: 9, letGo: null }, { held: 8.5, letGo: null }];

describe("interval-censored strength, seven brackets with three one-sided runs", () => {
  it.each([
    {
      distribution: "normal" as const,
      mean: 8.670673297718345,
      sd: 0.8149316362869444,
      logLikelihood: -14.631577885288845,
      meanInterval: [8.059878890396714, 9.338888303363987],
      sdInterval: [0.48654597465226135, 1.6072789629026283],
    },
    {
      distribution: "lognormal" as const,
      mean: 2.1571228225711554,
      sd: 0.09457492276338436,
      logLikelihood: -14.608997876217332,
      meanInterval: [2.085726668119183, 2.234118074171185],
      sdInterval: [0.056426574104766265, 0.18669870575640704],
    },
  ])("$distribution: estimates and profile intervals agree with the reference library", (expected) => {
    const fit = fitPull({ trials, distribution: expected.distribution });
    expect(fit.mean).toBeCloseToRelative(expected.mean, 1e-8);
    expect(fit.sd).toBeCloseToRelative(expected.sd, 1e-7);
    expect(fit.logLikelihood).toBeCloseToRelative(expected.logLikelihood, 1e-10);
    [0, 1].forEach((end) => {
      expect(fit.meanInterval?.[end]).toBeCloseToRelative(expected.meanInterval[end], 1e-6);
      expect(fit.sdInterval?.[end]).toBeCloseToRelative(expected.sdInterval[end], 1e-6);
    });
  });
});
