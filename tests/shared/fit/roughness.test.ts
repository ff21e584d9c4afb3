import { describe, expect, it } from "vitest";
import { gapHeightFromLeak, roughnessFromLeaks } from "#shared/fit/roughness.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { gapFlow } from "#shared/physics/restriction/lipGap.ts";

const air = { density: 1.2, viscosity: 1.81e-5 };
const lip = { perimeter: 0.28, land: 4e-3, lossSum: 1.5 };
const slot = { area: 6e-6 };
const rig = { ...lip, openings: [slot] };

/** Torricelli through the slot and the lip-gap law, noise on top. */
const leakTest = (height: number, noise: readonly number[] = [0, 0, 0, 0]) => ({
  air,
  points: [80, 200, 400, 800].map((pressure, i) => ({
    pressure,
    flow:
      (gapFlow({ ...lip, height }, air, pressure) + 0.61 * 6e-6 * Math.sqrt((2 * pressure) / 1.2)) *
      (1 + noise[i]),
  })),
});

describe("roughnessFromLeaks, on tests made with known gaps", () => {
  it.each([2e-5, 1e-4, 3e-4])("tells a roughness of %s m apart", (roughness) => {
    const fit = roughnessFromLeaks(rig, leakTest(4e-4), leakTest(4e-4 + roughness));
    expect(fit.roughness).toBeCloseToRelative(roughness, 1e-8);
    expect(fit.glass.height).toBeCloseToRelative(4e-4, 1e-10);
    expect(fit.warnings).toEqual([]);
  });

  it("gives the doubt of both tests' scatter together", () => {
    const noise = [0.01, -0.02, 0.015, -0.01];
    const fit = roughnessFromLeaks(rig, leakTest(4e-4, noise), leakTest(5e-4, noise));
    expect(fit.uncertainty).toBeCloseToRelative(
      Math.hypot(fit.glass.standardError ?? 0, fit.surface.standardError ?? 0),
      1e-12,
    );
    expect(Math.abs(fit.roughness - 1e-4)).toBeLessThan(3 * (fit.uncertainty ?? 0));
    expect(fit.uncertainty).toBeLessThan(1e-5);
  });

  // Heights 3, 4 and 8e-4 m: mean 5, s = √((4 + 1 + 9)/2) = √7, standard error √7/√3, all in 1e-4 m, by hand.
  it("gives each reading's own height, and the standard error of their mean", () => {
    const points = [3e-4, 4e-4, 8e-4].flatMap((height, i) => leakTest(height).points.slice(i, i + 1));
    const { heights, height, standardError } = gapHeightFromLeak(rig, { air, points });
    [3e-4, 4e-4, 8e-4].forEach((expected, i) => {
      expect(heights[i]).toBeCloseToRelative(expected, 1e-9);
    });
    expect(height).toBeCloseToRelative(5e-4, 1e-9);
    expect(standardError).toBeCloseToRelative(Math.sqrt(7 / 3) * 1e-4, 1e-8);
  });

  it("of a single reading knows no standard error", () => {
    const { points } = leakTest(4e-4);
    expect(gapHeightFromLeak(rig, { air, points: points.slice(0, 1) }).standardError).toBeNull();
  });

  // u(roughness) = √(u²(glass) + u²(surface)); a difference of twice it is just clear, of less isn't.
  it.each([
    { times: 1.98, told: false },
    { times: 2.02, told: true },
  ])("a difference of $times standard uncertainties is told apart: $told", ({ times, told }) => {
    const at = (heights: readonly number[]) => ({
      air,
      points: heights.flatMap((height, i) => leakTest(height).points.slice(i, i + 1)),
    });
    // 4e-4 ± 1e-5 in two readings each: standard errors of 1e-5, together √2·1e-5
    const roughness = times * Math.SQRT2 * 1e-5;
    const glass = at([3.9e-4, 4.1e-4]);
    const surface = at([3.9e-4 + roughness, 4.1e-4 + roughness]);
    const fit = roughnessFromLeaks(rig, glass, surface);
    expect(fit.uncertainty).toBeCloseToRelative(Math.SQRT2 * 1e-5, 1e-6);
    expect(fit.warnings.some(({ code }) => code === "not-told-apart")).toBe(!told);
  });

  it("matches a laminar gap with the cubic law of plane Poiseuille flow", () => {
    const thin = { perimeter: 0.28, land: 0.05, lossSum: 0 };
    const pressure = 200;
    const flow = (0.28 * 8e-5 ** 3 * pressure) / (12 * air.viscosity * 0.05);
    const { height } = gapHeightFromLeak({ ...thin, openings: [] }, { air, points: [{ pressure, flow }] });
    expect(height).toBeCloseToRelative(8e-5, 1e-9);
  });
});

describe("roughnessFromLeaks, on tests that don't tell", () => {
  it.each([
    ["tighter-than-glass", leakTest(5e-4), leakTest(4e-4)],
    [
      "not-told-apart",
      leakTest(4e-4, [0.05, -0.05, 0.04, -0.04]),
      leakTest(4.02e-4, [0.05, -0.05, 0.04, -0.04]),
    ],
    ["single-reading", leakTest(4e-4), { air, points: leakTest(5e-4).points.slice(0, 1) }],
  ])("%s is said", (code, glass, surface) => {
    const fit = roughnessFromLeaks(rig, glass, surface);
    expect(fit.warnings.map((note) => note.code)).toContain(code);
    expect(Number.isFinite(fit.roughness)).toBe(true);
  });

  it("less flow than the openings alone pass is refused", () => {
    const points = [{ pressure: 100, flow: 1e-6 }];
    expect(() => gapHeightFromLeak(rig, { air, points })).toThrow(NotEnoughDataError);
  });
});
