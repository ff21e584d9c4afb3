import { describe, expect, it } from "vitest";
import { fitLeak } from "#shared/fit/leakFit.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const law = (coefficient: number, exponent: number, pressures = [50, 120, 300, 700, 1500]) =>
  pressures.map((pressure) => ({ pressure, flow: coefficient * pressure ** exponent }));

describe("fitLeak, on an exact power law", () => {
  it.each([0.5, 0.55, 0.8, 1])("recovers coefficient and exponent %s", (exponent) => {
    const fit = fitLeak({ points: law(3e-5, exponent) });
    expect(fit.exponent).toBeCloseToRelative(exponent, 1e-9);
    expect(fit.coefficient).toBeCloseToRelative(3e-5, 1e-8);
    expect(fit.pressureRange).toEqual([50, 1500]);
    expectAllFinite(fit);
  });
});

describe("fitLeak, on scattered readings", () => {
  const noise = [0.03, -0.04, 0.02, -0.015, 0.02];
  const points = law(3e-5, 0.6).map((point, i) => ({ ...point, flow: point.flow * (1 + noise[i]) }));

  // A finer and finer search over x by plain evaluation, C at its best for each: no derivative, no solver.
  it("minimises the squares of the flow, not of its logarithm", () => {
    const squares = (x: number) => {
      const c =
        points.reduce((sum, p) => sum + p.flow * p.pressure ** x, 0) /
        points.reduce((sum, p) => sum + p.pressure ** (2 * x), 0);
      return points.reduce((sum, p) => sum + (p.flow - c * p.pressure ** x) ** 2, 0);
    };
    const fit = fitLeak({ points });
    const least = squares(fit.exponent);
    for (const step of [1e-2, 1e-3, 1e-4])
      expect(Math.min(squares(fit.exponent - step), squares(fit.exponent + step))).toBeGreaterThan(least);
  });

  // Computed once with scipy.optimize.curve_fit (SciPy 1.17.1), a library outside the project.
  it("gives the coefficients and standard errors of a reference library", () => {
    const fit = fitLeak({ points });
    expect(fit.coefficient).toBeCloseToRelative(2.7755482248205085e-5, 1e-6);
    expect(fit.exponent).toBeCloseToRelative(0.6127090198291903, 1e-7);
    expect(fit.standardErrors.coefficient).toBeCloseToRelative(2.39680022e-6, 1e-5);
    expect(fit.standardErrors.exponent).toBeCloseToRelative(1.24893586e-2, 1e-5);
    expect(fit.residualSd).toBeCloseToRelative(2.6641140322706665e-5, 1e-6);
  });

  it("gives standard errors that seeded repeats of the test scatter by", () => {
    let seed = 1;
    const uniform = () => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647;
    };
    const fits = Array.from({ length: 400 }, () =>
      fitLeak({
        points: law(3e-5, 0.7).map((point) => ({
          ...point,
          flow: point.flow + 2e-5 * (uniform() + uniform() + uniform() + uniform() - 2),
        })),
      }),
    );
    const sd = (values: number[]) => {
      const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
      return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
    };
    const stated = (errors: (number | null)[]) =>
      Math.sqrt(errors.reduce<number>((sum, e) => sum + (e ?? 0) ** 2, 0) / errors.length);
    expect(stated(fits.map((f) => f.standardErrors.exponent))).toBeCloseToRelative(
      sd(fits.map((f) => f.exponent)),
      0.15,
    );
    expect(stated(fits.map((f) => f.standardErrors.coefficient))).toBeCloseToRelative(
      sd(fits.map((f) => f.coefficient)),
      0.15,
    );
  });
});

describe("fitLeak, at the bounds of the exponent", () => {
  it.each([
    { exponent: 0.42, bound: 0.5 },
    { exponent: 1.1, bound: 1 },
  ])("readings that would give $exponent are held at $bound, and that is said", ({ exponent, bound }) => {
    const fit = fitLeak({ points: law(3e-5, exponent) });
    expect(fit.exponent).toBe(bound);
    expect(fit.standardErrors.exponent).toBeNull();
    expect(fit.warnings[0].code).toBe("exponent-at-bound");
    expect(fit.warnings[0].message).toContain(exponent.toFixed(3));
    expect(fit.coefficient).toBeGreaterThan(0);
  });
});

describe("fitLeak, on bad readings", () => {
  it("leaves pressures and flows not above zero out and counts them", () => {
    const fit = fitLeak({
      points: [...law(3e-5, 0.6), { pressure: -5, flow: 1e-4 }, { pressure: 0, flow: 0 }],
    });
    expect(fit.exponent).toBeCloseToRelative(0.6, 1e-9);
    expect(fit.warnings[0].message).toMatch(/^2 points/);
  });

  it.each([
    [
      "none above zero",
      [
        { pressure: -5, flow: 1e-4 },
        { pressure: 100, flow: -1e-4 },
      ],
    ],
    ["one", law(3e-5, 0.6, [100])],
    ["all at one pressure", law(3e-5, 0.6, [100, 101, 102])],
    ["none at all", []],
  ])("%s: refused, with what to measure", (_, points) => {
    expect(() => fitLeak({ points })).toThrow(NotEnoughDataError);
    expect(() => fitLeak({ points })).toThrow(/Measure/);
  });

  it("two points answer, their uncertainty unknown", () => {
    const fit = fitLeak({ points: law(3e-5, 0.6, [100, 400]) });
    expect(fit.exponent).toBeCloseToRelative(0.6, 1e-9);
    expect(fit.standardErrors).toEqual({ coefficient: null, exponent: null });
    expect(fit.warnings.map((note) => note.code)).toEqual(["no-residual"]);
  });

  it.each(["pressure", "flow"])("a %s that is NaN is refused by its path", (key) => {
    const points = law(3e-5, 0.6).map((point, i) => (i === 1 ? { ...point, [key]: Number.NaN } : point));
    expectOutOfRange(() => fitLeak({ points }), `points.1.${key}`);
  });
});
