import { describe, expect, it } from "vitest";
import { leakBands } from "#shared/fit/leakBands.ts";
import { fitLeak } from "#shared/fit/leakFit.ts";
import { normals } from "#tests/support/normals.ts";

const C = 2e-5;
const X = 0.62;
const SD = 6e-6;
const PRESSURES = [60, 110, 180, 300, 520, 900];
const law = (pressure: number) => C * pressure ** X;

function made(noise: () => number) {
  return fitLeak({
    points: PRESSURES.map((pressure) => ({ pressure, flow: law(pressure) + SD * noise() })),
  });
}

describe("leakBands, over 2000 leak tests made with a known law and even noise", () => {
  // A 95 % band that is right holds the truth in 95 of 100 trials; the binomial sd of 2000 trials is 0.5 %.
  it.each([60, 250, 900])(
    "at %s Pa: both bands hold what they promise, 95 % within four binomial sd",
    (at) => {
      const noise = normals(11);
      let [mean, next] = [0, 0];
      for (let i = 0; i < 2000; i++) {
        const bands = leakBands(made(noise), at);
        if (!bands) throw new Error("no residual left");
        const reading = law(at) + SD * noise();
        if (bands.mean.low <= law(at) && law(at) <= bands.mean.high) mean += 1;
        if (bands.prediction.low <= reading && reading <= bands.prediction.high) next += 1;
      }
      expect(Math.abs(mean / 2000 - 0.95)).toBeLessThan(0.02);
      expect(Math.abs(next / 2000 - 0.95)).toBeLessThan(0.02);
    },
  );
});

describe("leakBands, one fit", () => {
  const fit = made(normals(3));

  it("at confidence 0.95 with 4 degrees of freedom takes t = 2.776, the table's value", () => {
    // Student's t, 0.975, ν = 4: 2.776 (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2).
    const [[cc, cx], [, xx]] = fit.covariance ?? [[], []];
    const log = Math.log(250);
    const half = 2.776 * Math.sqrt(cc + 2 * log * cx + log ** 2 * xx);
    const bands = leakBands(fit, 250);
    expect(fit.dof).toBe(4);
    expect(Math.log((bands?.mean.high ?? 0) / (bands?.flow ?? 1))).toBeCloseToRelative(half, 2e-4);
  });

  it("has the same uncertainty of x and C_L in its covariance as in its standard errors", () => {
    const [[cc], [, xx]] = fit.covariance ?? [[], []];
    expect(Math.sqrt(cc) * fit.coefficient).toBeCloseToRelative(fit.standardErrors.coefficient ?? 0, 1e-12);
    expect(Math.sqrt(xx)).toBeCloseToRelative(fit.standardErrors.exponent ?? 0, 1e-12);
  });

  it("says whether the pressure was tested, and nothing where two points leave no residual", () => {
    expect(leakBands(fit, 250)?.extrapolated).toBe(false);
    expect(leakBands(fit, 2000)?.extrapolated).toBe(true);
    const two = fitLeak({ points: [100, 400].map((pressure) => ({ pressure, flow: law(pressure) })) });
    expect(leakBands(two, 250)).toBeNull();
  });

  it("with the exponent held at a bound: an even share of the flow at every pressure", () => {
    const steep = fitLeak({
      points: PRESSURES.map((p, i) => ({ pressure: p, flow: 1e-7 * p ** 1.2 * (1 + (i % 2) / 50) })),
    });
    const share = (at: number) => (leakBands(steep, at)?.mean.high ?? 0) / (leakBands(steep, at)?.flow ?? 1);
    expect(steep.exponent).toBe(1);
    expect(share(100)).toBeCloseToRelative(share(800), 1e-12);
  });
});
