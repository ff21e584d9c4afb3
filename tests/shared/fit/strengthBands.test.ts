import { describe, expect, it } from "vitest";
import { fitCensored } from "#shared/fit/censoredFit.ts";
import type { Bracket } from "#shared/fit/censoredLikelihood.ts";
import { informationOfTrial, moreTrials } from "#shared/fit/moreTrials.ts";
import { strengthAt, strengthInformation } from "#shared/fit/strengthBands.ts";
import { normals } from "#tests/support/normals.ts";

const MEAN = 8;
const SD = 1;
function made(noise: () => number, count: number, step: number): Bracket[] {
  return Array.from({ length: count }, () => {
    const strength = MEAN + SD * noise();
    const low = Math.floor(strength / step) * step;
    return { low, high: low + step, count: 1 };
  });
}
const exact = (values: readonly number[]) => values.map((low) => ({ low, high: low, count: 1 }));

describe("strengthAt, over 300 seeded sets of 20 pulls in steps of the scatter", () => {
  // Φ(0) = 0.5 and Φ(−1) = 0.158655 (Abramowitz & Stegun, table 26.1); binomial sd of 300 trials 1.3 %.
  it.each([
    [8, 0.5],
    [7, 0.158655],
  ])("at %s N: the band holds the true share in 95 %, within 3.5 binomial sd", (load, share) => {
    const noise = normals(31);
    let held = 0;
    for (let i = 0; i < 300; i++) {
      const brackets = made(noise, 20, SD);
      const { band } = strengthAt(brackets, fitCensored(brackets), load);
      if (band.low <= share && share <= band.high) held += 1;
    }
    expect(Math.abs(held / 300 - 0.95)).toBeLessThan(0.045);
  });
});

describe("strengthAt, one fit", () => {
  const brackets = made(normals(7), 12, 0.5);
  const fit = fitCensored(brackets);

  // The interval itself is found to a millionth of the span of the loads.
  it("at the ends of the mean's interval has a band that just touches one half", () => {
    const [lo, hi] = fit.meanInterval ?? [Number.NaN, Number.NaN];
    expect(strengthAt(brackets, fit, lo).band.high).toBeCloseTo(0.5, 5);
    expect(strengthAt(brackets, fit, hi).band.low).toBeCloseTo(0.5, 5);
  });

  it("rises with the load, its band around it", () => {
    const seen = [5, 6, 7, 8, 9, 10, 11].map((load) => strengthAt(brackets, fit, load));
    for (const [i, { share, band }] of seen.entries()) {
      expect(band.low <= share && share <= band.high).toBe(true);
      if (i > 0) expect(share).toBeGreaterThan(seen[i - 1].share);
    }
  });

  it("where no scatter is seen: a step, its band wide within what the brackets share", () => {
    const agree = [
      { low: 7, high: 9, count: 1 },
      { low: 7.5, high: 8.5, count: 1 },
      { low: 7, high: 8.4, count: 1 },
    ];
    const none = fitCensored(agree);
    expect(strengthAt(agree, none, 4).share).toBe(0);
    expect(strengthAt(agree, none, 12).share).toBe(1);
    const { band } = strengthAt(agree, none, 8);
    expect(band.low).toBeLessThan(0.1);
    expect(band.high).toBeGreaterThan(0.9);
  });
});

describe("strengthInformation, on exact readings", () => {
  // Normal sample: −∂²L is n/s² for the mean and 2n/s² for the scatter at the maximum.
  it("is the textbook's, each reading with the same share", () => {
    const brackets = exact([7, 7.8, 8.1, 9.4]);
    const fit = fitCensored(brackets);
    const found = strengthInformation(brackets, fit);
    expect(found?.information[0][0]).toBeCloseToRelative(4 / fit.sd ** 2, 1e-6);
    expect(found?.information[1][1]).toBeCloseToRelative(8 / fit.sd ** 2, 1e-6);
    for (const share of found?.shares ?? []) expect(share).toBeCloseToRelative(0.25, 1e-6);
  });

  it("gives a bracket that runs open less than one that is closed, and says nothing without scatter", () => {
    const brackets = [...made(normals(3), 6, 0.2), { low: 6, high: Number.POSITIVE_INFINITY, count: 1 }];
    const { shares } = strengthInformation(brackets, fitCensored(brackets)) ?? { shares: [] };
    expect(shares[6]).toBeLessThan(Math.min(...shares.slice(0, 6)));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseToRelative(1, 1e-12);
    expect(strengthInformation(brackets, { mean: 8, sd: 0 })).toBeNull();
  });
});

describe("informationOfTrial", () => {
  it("with fine steps comes to that of an exact reading, with coarse ones to less", () => {
    const fine = informationOfTrial(2, 1e-3);
    expect(fine[0][0]).toBeCloseToRelative(1 / 4, 1e-6);
    expect(fine[1][1]).toBeCloseToRelative(2 / 4, 1e-6);
    expect(informationOfTrial(2, 0)).toEqual([
      [0.25, 0],
      [0, 0.5],
    ]);
    expect(informationOfTrial(2, 4)[0][0]).toBeLessThan(0.2);
  });

  // Sheppard's correction: grouped in steps h the mean's variance grows by h²/12 (Kendall & Stuart, vol. 1, section 3.18).
  it.each([0.5, 1])("with steps of %s sd loses what Sheppard's correction says, within 1 %", (step) => {
    expect(1 / informationOfTrial(1, step)[0][0]).toBeCloseToRelative(1 + step ** 2 / 12, 0.01);
  });
});

describe("moreTrials", () => {
  it("asks for three times as many exact readings, for twice the sureness: u falls as 1/√n", () => {
    const found = moreTrials(exact([7, 7.8, 8.1, 9.4]), fitCensored(exact([7, 7.8, 8.1, 9.4])));
    expect(found?.count).toBe(12);
    expect(found?.shrinks).toBeCloseToRelative(0.5, 1e-6);
  });

  it("says nothing where no scatter was seen, and stops at forty", () => {
    expect(moreTrials(exact([7, 8]), { mean: 7.5, sd: 0 })).toBeNull();
    const many = made(normals(12), 60, 0.5);
    expect(moreTrials(many, fitCensored(many))?.count).toBe(40);
  });
});
