import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitPull, type PullTrial } from "#shared/fit/pullFit.ts";
import { fitPullTrend } from "#shared/fit/pullTrend.ts";
import { NoAnswerError, NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const trial = (held: number, letGo: number | null): PullTrial => ({ held, letGo });

/** χ² with one degree of freedom, 95 %: 3.841, as tabulated. */
const CHI_SQUARE_TABLE = 3.841;

describe("fitPull, on exact readings", () => {
  const loads = [8.1, 9.4, 8.8, 9.9, 8.3, 9.1];
  const n = loads.length;
  const mean = loads.reduce((sum, x) => sum + x, 0) / n;
  const sd = Math.sqrt(loads.reduce((sum, x) => sum + (x - mean) ** 2, 0) / n);
  const fit = fitPull({ trials: loads.map((load) => trial(load, load)) });

  // Closed form: with exact readings L = −n/2·(ln 2πs² + 1) and the profile falls as n/2·ln(1 + (m − mean)²/s²).
  it("gives mean and maximum-likelihood sd", () => {
    expect(fit.mean).toBeCloseToRelative(mean, 1e-9);
    expect(fit.sd).toBeCloseToRelative(sd, 1e-9);
    expect(fit.logLikelihood).toBeCloseToRelative((-n / 2) * (Math.log(2 * Math.PI * sd * sd) + 1), 1e-9);
  });

  it("gives the closed form of the profile interval of the mean", () => {
    const half = sd * Math.sqrt(Math.expm1(CHI_SQUARE_TABLE / n));
    expect(fit.meanInterval?.[0]).toBeCloseToRelative(mean - half, 1e-4);
    expect(fit.meanInterval?.[1]).toBeCloseToRelative(mean + half, 1e-4);
  });

  it("gives sd limits where n·(ln(s/ŝ) + ½(ŝ²/s² − 1)) has grown to half of 3.841", () => {
    for (const s of fit.sdInterval ?? [0, 0])
      expect(n * (Math.log(s / sd) + (sd ** 2 / s ** 2 - 1) / 2)).toBeCloseToRelative(
        CHI_SQUARE_TABLE / 2,
        1e-3,
      );
  });

  it("brackets that close in on the readings give the same answer", () => {
    const close = fitPull({ trials: loads.map((load) => trial(load - 1e-4, load + 1e-4)) });
    expect(close.mean).toBeCloseToRelative(mean, 1e-6);
    expect(close.sd).toBeCloseToRelative(sd, 1e-6);
  });
});

describe("fitPull, on brackets", () => {
  const trials = [trial(8, 8.5), trial(8.5, 9), trial(7.5, 8), trial(9, null), trial(0, 8.2)];

  /** Normal distribution function by Simpson's rule on the density: written out here, so that it checks the library's. */
  function phi(z: number): number {
    if (z === Number.NEGATIVE_INFINITY) return 0;
    if (z === Number.POSITIVE_INFINITY) return 1;
    const steps = 400;
    const h = z / steps;
    let sum = 0;
    for (let i = 0; i <= steps; i += 1) {
      const weight = i === 0 || i === steps ? 1 : i % 2 ? 4 : 2;
      sum += weight * Math.exp(-((i * h) ** 2) / 2);
    }
    return 0.5 + (sum * h) / 3 / Math.sqrt(2 * Math.PI);
  }
  const logLikelihood = (mean: number, sd: number) =>
    trials.reduce((sum, { held, letGo }) => {
      const low = held > 0 ? (held - mean) / sd : Number.NEGATIVE_INFINITY;
      const high = letGo === null ? Number.POSITIVE_INFINITY : (letGo - mean) / sd;
      return sum + Math.log(phi(high) - phi(low));
    }, 0);

  const fit = fitPull({ trials });

  it("stands on the top of the likelihood, written out anew", () => {
    expect(fit.logLikelihood).toBeCloseToRelative(logLikelihood(fit.mean, fit.sd), 1e-9);
    for (const [dm, ds] of [
      [0.01, 0],
      [-0.01, 0],
      [0, 0.01],
      [0, -0.01],
      [0.007, 0.007],
      [-0.007, 0.007],
    ])
      expect(logLikelihood(fit.mean + dm, fit.sd + ds)).toBeLessThan(fit.logLikelihood);
  });

  it("ends its interval of the mean where the best sd leaves 1.92 less", () => {
    for (const end of fit.meanInterval ?? [0, 0]) {
      let best = Number.NEGATIVE_INFINITY;
      for (let sd = 0.4; sd < 5; sd *= 1.002) best = Math.max(best, logLikelihood(end, sd));
      expect(fit.logLikelihood - best).toBeCloseToRelative(CHI_SQUARE_TABLE / 2, 1e-3);
    }
  });

  it("is no average of bracket middles: a run stopped early draws the mean up", () => {
    const closed = fitPull({ trials: trials.map((t) => (t.letGo === null ? trial(9, 9.2) : t)) });
    expect(fit.mean).toBeGreaterThan(closed.mean);
  });

  it("grows with the unit of load, and shifts with the load", () => {
    const scaled = fitPull({
      trials: trials.map((t) => trial(1000 * t.held, t.letGo === null ? null : 1000 * t.letGo)),
    });
    expect(scaled.mean).toBeCloseToRelative(1000 * fit.mean, 1e-8);
    expect(scaled.sd).toBeCloseToRelative(1000 * fit.sd, 1e-8);
  });

  it("log-normal is the normal fit of the logarithms", () => {
    const loads = [2, 3.1, 2.4, 4.2, 2.9];
    const log = fitPull({ trials: loads.map((x) => trial(x, x)), distribution: "lognormal" });
    const mean = loads.reduce((sum, x) => sum + Math.log(x), 0) / loads.length;
    expect(log.mean).toBeCloseToRelative(mean, 1e-9);
    expect(log.median).toBeCloseToRelative(Math.exp(mean), 1e-9);
  });

  it("95 % intervals of the mean hold the truth in at least 90 of 100 seeded series", () => {
    let seed = 7;
    const uniform = () => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    let inside = 0;
    for (let series = 0; series < 100; series += 1) {
      const made = Array.from({ length: 12 }, () => {
        const load = Math.floor((10 + 1.2 * normal()) / 0.5) * 0.5;
        return trial(load, load + 0.5);
      });
      const [low, high] = fitPull({ trials: made }).meanInterval ?? [0, 0];
      if (low <= 10 && high >= 10) inside += 1;
    }
    expect(inside).toBeGreaterThanOrEqual(90);
  });
});

describe("fitPull, on brackets that show no scatter", () => {
  it("answers with sd 0, an interval from 0, and asks for finer steps", () => {
    const fit = fitPull({ trials: [trial(8, 8.5), trial(8.2, 9), trial(7.5, 8.4)] });
    expect(fit.sd).toBe(0);
    expect(fit.mean).toBeCloseToRelative(8.3, 1e-9);
    expect(fit.sdInterval?.[0]).toBe(0);
    expect(fit.meanInterval?.[0]).toBeLessThanOrEqual(8.2);
    expect(fit.meanInterval?.[1]).toBeGreaterThanOrEqual(8.4);
    expect(fit.warnings.find((note) => note.code === "no-scatter-seen")?.message).toMatch(
      /836\.2 g to 856\.6 g/,
    );
    expectAllFinite(fit);
  });

  it("brackets that only touch share the odds: two below, one above give −3·entropy", () => {
    const fit = fitPull({ trials: [trial(8, 8.5), trial(8, 8.5), trial(8.5, 9)] });
    expect(fit.sd).toBe(0);
    expect(fit.logLikelihood).toBeCloseToRelative(2 * Math.log(2 / 3) + Math.log(1 / 3), 1e-12);
    expectAllFinite(fit);
  });

  it("a run that held and one that let go at once leave the intervals open, and say so", () => {
    const fit = fitPull({ trials: [trial(8, null), trial(0, 9)] });
    expect(fit.meanInterval).toBeNull();
    expect(fit.warnings.map((note) => note.code)).toContain("interval-open");
  });
});

describe("fitPull, on trials that can't answer", () => {
  const refused = (trials: PullTrial[]) => () => fitPull({ trials });
  it.each([
    ["no trial", refused([])],
    ["one trial", refused([trial(8, 9)])],
    ["all held", refused([trial(8, null), trial(9, null)])],
    ["all let go at once", refused([trial(0, 2), trial(0, 3)])],
    ["exact and all alike", refused([trial(8, 8), trial(8, 8), trial(8, 8)])],
    ["an exact one inside every bracket", refused([trial(8, 8), trial(7, 9)])],
    ["larger loads hold than let go", refused([trial(9, null), trial(0, 8)])],
    ["nothing loaded", refused([trial(0, null), trial(0, null)])],
  ])("%s: refused, with what to measure", (_, call) => {
    expect(call).toThrow(NotEnoughDataError);
    expect(call).toThrow(/Pull with|Begin with|Repeat|Give/);
  });

  it("held above letGo is refused by the trial", () => {
    expectOutOfRange(refused([trial(8, 9), trial(9, 8)]), "trials.1.held");
  });
  it.each([-1, Number.NaN])("a load of %s is refused", (load) => {
    expectOutOfRange(refused([trial(8, 9), trial(load, 9)]), "trials.1.held");
  });

  it("letting go without any load is refused for a log-normal strength, taken for a normal one", () => {
    const trials = [trial(0, 0), trial(1, 2), trial(2.5, 3)];
    expectOutOfRange(() => fitPull({ trials, distribution: "lognormal" }), "trials.0.letGo");
    expectAllFinite(fitPull({ trials }));
  });

  it("a pull without load says nothing and is left out", () => {
    const fit = fitPull({ trials: [trial(8, 9), trial(9.5, 10), trial(0, null)] });
    expect(fit.warnings.map((note) => note.code)).toContain("empty-trials");
  });

  it("any list of brackets gets a finite answer or a refusal that says what to measure", () => {
    const brackets = fc.array(
      fc
        .tuple(
          fc.double({ min: 0, max: 50, noNaN: true }),
          fc.double({ min: 0, max: 5, noNaN: true }),
          fc.boolean(),
        )
        .map(([held, width, open]) => trial(held, open ? null : held + width)),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(
        brackets,
        fc.constantFrom("normal" as const, "lognormal" as const),
        (trials, distribution) => {
          try {
            expectAllFinite(fitPull({ trials, distribution }));
          } catch (error) {
            if (!(error instanceof NoAnswerError)) throw error;
          }
        },
      ),
      { numRuns: 300, seed: 11 },
    );
  });
});

describe("fitPullTrend, on pulls at different charge", () => {
  it("divides the prediction out and restates the answer at the reference", () => {
    const predicted = [10, 9, 8, 7, 6];
    const factors = [0.82, 0.78, 0.85, 0.8, 0.75];
    const fit = fitPullTrend(
      predicted.map((p, i) => ({ ...trial(p * factors[i], p * factors[i]), predicted: p })),
      9,
    );
    const expected = Math.exp(factors.reduce((sum, f) => sum + Math.log(f), 0) / factors.length);
    expect(fit.ratio.median).toBeCloseToRelative(expected, 1e-9);
    expect(fit.median).toBeCloseToRelative(9 * expected, 1e-9);
    const raw = fitPull({
      trials: predicted.map((p, i) => trial(p * factors[i], p * factors[i])),
      distribution: "lognormal",
    });
    expect(fit.ratio.sd).toBeLessThan(0.4 * raw.sd);
  });
  it("a prediction of 0 is refused by its trial", () => {
    expectOutOfRange(() => fitPullTrend([{ ...trial(1, 2), predicted: 0 }], 1), "trials.0.predicted");
  });
});
