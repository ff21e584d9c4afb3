import { describe, expect, it } from "vitest";
import { fitPropeller } from "#shared/fit/propellerFit.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const DIAMETER = 0.127;
/** T = C_T ρ n² D⁴, P = C_P ρ n³ D⁵ written out, each with a drift per ln of speed. */
const row = (rpm: number, drift = 0, density = 1.2) => {
  const n = rpm / 60;
  const share = 1 + drift * Math.log(rpm / 10_000);
  return {
    rpm,
    density,
    thrust: 0.13 * share * density * n ** 2 * DIAMETER ** 4,
    shaftPower: 0.07 * share * density * n ** 3 * DIAMETER ** 5,
  };
};
const SPEEDS = [5000, 8000, 12_000, 16_000];

describe("fitPropeller, on exact rows", () => {
  it("recovers C_T and C_P at any density, with no drift", () => {
    const rows = SPEEDS.map((rpm, i) => row(rpm, 0, 1 + i / 10));
    const fit = fitPropeller({ diameter: DIAMETER, rows });
    expect(fit.thrust[0]).toBeCloseToRelative(0.13, 1e-9);
    expect(fit.power?.[0]).toBeCloseToRelative(0.07, 1e-9);
    expect(Math.abs(fit.thrust[1])).toBeLessThan(1e-9);
  });

  it("recovers a drift, whatever the chord", () => {
    for (const chord of [0.008, 0.02]) {
      const fit = fitPropeller({ diameter: DIAMETER, chord, rows: SPEEDS.map((rpm) => row(rpm, 0.08)) });
      const tip = (Math.PI * DIAMETER * 10_000) / 60;
      const reynolds = (1.2 * 0.75 * tip * chord) / 1.813e-5;
      const at = fit.thrust[0] + fit.thrust[1] * Math.log(reynolds / fit.referenceReynolds);
      expect(at).toBeCloseToRelative(0.13, 1e-3);
      expect(fit.thrust[1]).toBeCloseToRelative(0.13 * 0.08, 1e-6);
    }
  });

  it("believes no drift from two speeds", () => {
    const fit = fitPropeller({
      diameter: DIAMETER,
      rows: [row(6000, 0.1), row(12_000, 0.1), row(12_010, 0.1)],
    });
    expect(fit.thrust[1]).toBe(0);
    expect(fit.warnings.map((note) => note.code)).toContain("no-drift-seen");
  });

  it("believes no drift that the scatter may have made", () => {
    const noise = [0.03, -0.02, 0.02, -0.03];
    const rows = SPEEDS.map((rpm, i) => ({ ...row(rpm), thrust: row(rpm).thrust * (1 + noise[i]) }));
    const fit = fitPropeller({ diameter: DIAMETER, rows });
    expect(fit.thrust[1]).toBe(0);
    expect(fit.residualSd.thrust).toBeGreaterThan(0);
    expect(fit.standardErrors.thrust).toBeGreaterThan(0);
  });

  it("without shaft power has no power curve, and says so", () => {
    const rows = SPEEDS.map((rpm) => ({ ...row(rpm), shaftPower: undefined }));
    const fit = fitPropeller({ diameter: DIAMETER, rows });
    expect(fit.power).toBeNull();
    expect(fit.warnings.map((note) => note.code)).toContain("no-shaft-power");
  });

  it("one row answers, its uncertainty unknown", () => {
    const fit = fitPropeller({ diameter: DIAMETER, chord: 0.01, rows: [row(9000)] });
    expect(fit.thrust[0]).toBeCloseToRelative(0.13, 1e-9);
    expect(fit.standardErrors.thrust).toBeNull();
    expectAllFinite(fit);
  });
});

describe("fitPropeller, on rows that can't answer", () => {
  it.each([
    ["no rows", []],
    ["thrust away from the surface", [{ ...row(9000), thrust: -1 }]],
  ])("%s: refused", (_, rows) => {
    expect(() => fitPropeller({ diameter: DIAMETER, rows })).toThrow(NotEnoughDataError);
  });
  it.each([
    ["rpm", 0],
    ["thrust", Number.NaN],
    ["shaftPower", -1],
    ["density", 0],
  ])("a %s of %s is refused by its path", (key, value) => {
    expectOutOfRange(
      () => fitPropeller({ diameter: DIAMETER, rows: [row(9000), { ...row(9000), [key]: value }] }),
      `rows.1.${key}`,
    );
  });
});
