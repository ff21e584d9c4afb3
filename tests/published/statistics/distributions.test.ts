import { describe, expect, it } from "vitest";
import { clopperPearson, normalQuantile, studentQuantile, wilson } from "#shared/numeric/distributions.ts";

/** Largest distance from a printed value that rounding to its last decimal can leave, and a hair for the binary fractions. */
const rounded = (decimals: number): number => 0.5 * 10 ** -decimals + 1e-12;
const expectPrinted = (value: number, printed: number, decimals: number): void => {
  expect(Math.abs(value - printed)).toBeLessThanOrEqual(rounded(decimals));
};

describe("Student's t quantiles, against the printed table", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2, three decimals; class: found (copy of the table).
  // Its 0.999 column is left out: it is off in the third decimal (dof 1: 318.313 for 318.309).
  it.each([
    [1, 0.975, 12.706],
    [2, 0.975, 4.303],
    [3, 0.975, 3.182],
    [4, 0.975, 2.776],
    [5, 0.975, 2.571],
    [8, 0.975, 2.306],
    [10, 0.975, 2.228],
    [20, 0.975, 2.086],
    [30, 0.975, 2.042],
    [60, 0.975, 2.0],
    [100, 0.975, 1.984],
    [5, 0.99, 3.365],
    [10, 0.95, 1.812],
    [10, 0.995, 3.169],
  ])("%s degrees of freedom at %s: %s", (dof, p, t) => {
    expectPrinted(studentQuantile(p, dof), t, 3);
  });
});

describe("normal quantiles, against the printed table", () => {
  // Last row of the same table, three decimals; class: found in part (the further digits are computed, in exact arithmetic to ten).
  it.each([
    [0.9, 1.282, 1.2815515655],
    [0.95, 1.645, 1.644853627],
    [0.975, 1.96, 1.9599639845],
    [0.99, 2.326, 2.326347874],
    [0.995, 2.576, 2.5758293035],
    [0.999, 3.09, 3.0902323062],
  ])("at %s: %s", (p, printed, digits) => {
    expectPrinted(normalQuantile(p), printed, 3);
    expect(Math.abs(normalQuantile(p) - digits)).toBeLessThanOrEqual(1e-9);
  });
});

describe("intervals of a proportion, against printed examples", () => {
  // NIST/SEMATECH e-Handbook, section 7.2.4.1: 4 of 20 at 90 %, limits to six decimals; class: found. Its root finder stopped at about
  // 2e-6 (0.401029 for 0.4010281), and its text then rounds the upper limit to 0.400 where 0.401 follows.
  it("exact, 4 of 20 at 90 %", () => {
    const [lo, hi] = clopperPearson(4, 20, 0.9);
    expect(Math.abs(lo - 0.071354)).toBeLessThanOrEqual(2e-6);
    expect(Math.abs(hi - 0.401029)).toBeLessThanOrEqual(2e-6);
  });

  // Newcombe, Statistics in Medicine 17 (1998) 857, table I, four decimals; class: values from memory (the reference itself is confirmed).
  it.each([
    [81, 263, [0.2553, 0.3662], [0.2527, 0.3676]],
    [15, 148, [0.0624, 0.1605], [0.0578, 0.1617]],
    [0, 20, [0, 0.1611], [0, 0.1684]],
    [1, 29, [0.0061, 0.1718], [0.0009, 0.1776]],
  ])("score and exact, %s of %s at 95 %%", (x, n, score, exact) => {
    wilson(x, n, 0.95).forEach((end, i) => {
      expectPrinted(end, score[i], 4);
    });
    clopperPearson(x, n, 0.95).forEach((end, i) => {
      expectPrinted(end, exact[i], 4);
    });
  });

  // Miller & Freund, Probability and Statistics for Engineers, p. 280: 36 of 100 at 95 %, large-sample interval (0.266, 0.454); class: found.
  it("large-sample, 36 of 100, by the normal quantile; the score interval lies to the right of it", () => {
    const half = normalQuantile(0.975) * Math.sqrt((0.36 * 0.64) / 100);
    expectPrinted(0.36 - half, 0.266, 3);
    expectPrinted(0.36 + half, 0.454, 3);
    const [lo, hi] = wilson(36, 100, 0.95);
    expect(lo).toBeGreaterThan(0.266);
    expect(hi).toBeGreaterThan(0.454);
  });
});

describe("large-sample interval of a mean, against a printed example", () => {
  // Miller & Freund, Probability and Statistics for Engineers, p. 210: n = 50, mean 305.58, s = 36.97, 99 %: (292.12, 319.04); class: found.
  // The book takes z = 2.575 for 2.5758, which moves the ends by 0.004.
  it("50 readings at 99 %, by the normal quantile", () => {
    const half = (normalQuantile(0.995) * 36.97) / Math.sqrt(50);
    expect(Math.abs(305.58 - half - 292.12)).toBeLessThanOrEqual(0.005 + 0.0045);
    expect(Math.abs(305.58 + half - 319.04)).toBeLessThanOrEqual(0.005 + 0.0045);
  });
});
