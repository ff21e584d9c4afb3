import { describe, expect, it } from "vitest";
import { fitProbit } from "#shared/fit/probit.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

describe("fitProbit, on counts", () => {
  // Two levels and two unknowns: the fit passes through both shares. Φ(0) = 0.5, Φ(1) = 0.84134474607 (tabulated).
  it("through two levels is exact, with no deviance", () => {
    const fit = fitProbit([
      { level: 10, trials: 40, events: 20 },
      { level: 12, trials: 100_000_000, events: 84_134_475 },
    ]);
    expect(fit.mean).toBeCloseToRelative(10, 1e-6);
    expect(fit.sd).toBeCloseToRelative(2, 1e-5);
    expect(fit.intercept).toBeCloseToRelative(-5, 1e-5);
    expect(Math.abs(fit.deviance)).toBeLessThan(1e-6);
  });

  it("empty levels change nothing", () => {
    const counts = [
      { level: 1, trials: 10, events: 2 },
      { level: 2, trials: 10, events: 5 },
      { level: 3, trials: 10, events: 9 },
    ];
    const fit = fitProbit(counts);
    expect(fitProbit([...counts, { level: 9, trials: 0, events: 0 }])).toEqual(fit);
  });
});

describe("fitProbit, on counts that can't answer", () => {
  it.each([
    ["no event", [{ level: 1, trials: 5, events: 0 }]],
    ["only events", [{ level: 1, trials: 5, events: 5 }]],
    [
      "a level that parts them all",
      [
        { level: 1, trials: 5, events: 0 },
        { level: 2, trials: 5, events: 5 },
      ],
    ],
    [
      "events rarer at higher levels",
      [
        { level: 1, trials: 9, events: 8 },
        { level: 2, trials: 9, events: 1 },
      ],
    ],
  ])("%s: refused", (_, counts) => {
    expect(() => fitProbit(counts)).toThrow(NotEnoughDataError);
  });
  it("more events than trials are refused by their path", () => {
    expectOutOfRange(() => fitProbit([{ level: 1, trials: 3, events: 4 }]), "counts.0.events");
  });
});
