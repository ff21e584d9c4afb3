import { describe, expect, it } from "vitest";
import { normalQuantile } from "#shared/numeric/normalQuantile.ts";
import { studentQuantile } from "#shared/numeric/student.ts";

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

describe("large-sample interval of a proportion, against a printed example", () => {
  // Miller & Freund, Probability and Statistics for Engineers, p. 280: 36 of 100 at 95 %, large-sample interval (0.266, 0.454); class: found.
  it("36 of 100, by the normal quantile", () => {
    const half = normalQuantile(0.975) * Math.sqrt((0.36 * 0.64) / 100);
    expectPrinted(0.36 - half, 0.266, 3);
    expectPrinted(0.36 + half, 0.454, 3);
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
