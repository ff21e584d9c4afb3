import { describe, expect, it } from "vitest";
import { fitRotor } from "#shared/fit/rotorFit.ts";
import type { RotorReadingPoint } from "#shared/fit/rotorPoints.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";

const PHIS = [0, 0.02, 0.05, 0.08, 0.11, 0.14, 0.17, 0.2];
/** Made up; the statistics expected below were computed from them once with numpy (normal equations, hat matrix). */
const NOISY = [1.02, 1.01, 0.985, 0.9, 0.81, 0.66, 0.48, 0.27];
const DIAMETER = 0.05;

const noisy = PHIS.map((phi, i) => readingAt({ phi, psi: NOISY[i] }));
const exact = (psi: (phi: number) => number, phis = PHIS) =>
  phis.map((phi) => readingAt({ phi, psi: psi(phi) }));

describe("fitRotor, on eight noisy points", () => {
  const fit = fitRotor({ diameter: DIAMETER, points: noisy });

  it("takes degree 2, the highest that eight points allow, and says so", () => {
    expect(fit.degree).toBe(2);
    expect(fit.aicc).toBeCloseToRelative(-63.56192304802723, 1e-9);
    expect(fit.reason).toMatch(/^degree 2: 2 is the highest that so few points allow/);
  });

  it("gives the coefficients and statistics of an independent least squares", () => {
    [1.0178470549594916, 0.22375908432127334, -19.8368601874733].forEach((c, j) => {
      expect(fit.psi[j]).toBeCloseToRelative(c, 1e-9);
    });
    expect(fit.residualSd).toBeCloseToRelative(0.006276443947928394, 1e-9);
    expect(fit.rSquared).toBeCloseToRelative(0.9996290236322467, 1e-9);
    expect(fit.leaveOneOutSd).toBeCloseToRelative(0.007212455219378913, 1e-9);
    expect(fit.dof).toBe(5);
  });

  it("reports the range of the readings, no outlier, and no stall from a rise within its uncertainty", () => {
    expect(fit.phiMin).toBe(0);
    expect(fit.phiMax).toBeCloseToRelative(0.2, 1e-12);
    expect(fit.outliers).toEqual([]);
    expect(fit.psi[1]).toBeGreaterThan(0);
    expect(fit.stall).toBe(false);
  });

  it("gives the same curve whatever speed, size and density each reading was taken at", () => {
    const pooled = PHIS.map((phi, i) =>
      readingAt({
        phi,
        psi: NOISY[i],
        rpm: 9000 + 2500 * i,
        density: 1 + i / 20,
        diameter: i % 2 ? 0.03 : 0.08,
      }),
    );
    const other = fitRotor({ diameter: DIAMETER, points: pooled });
    other.psi.forEach((c, j) => {
      expect(c).toBeCloseToRelative(fit.psi[j], 1e-9);
    });
  });

  it("fits as well whatever diameter is taken for all of them", () => {
    const unsized = noisy.map((point) => ({ ...point, diameter: undefined }));
    const [small, large] = [0.02, 0.09].map((diameter) => fitRotor({ diameter, points: unsized }));
    expect(small.residualSd / small.psi[0]).toBeCloseToRelative(large.residualSd / large.psi[0], 1e-9);
    expect(small.rSquared).toBeCloseToRelative(large.rSquared, 1e-9);
  });

  it("equal weights of any size change nothing, a heavy point draws the curve to it", () => {
    const scaled = fitRotor({ diameter: DIAMETER, points: noisy.map((p) => ({ ...p, weight: 4e6 })) });
    expect(scaled.aicc).toBeCloseToRelative(fit.aicc ?? 0, 1e-9);
    expect(scaled.psi[0]).toBeCloseToRelative(fit.psi[0], 1e-9);
    const points = noisy.map((p, i) => ({ ...p, weight: i === 3 ? 1e9 : 1 }));
    const { psi } = fitRotor({ diameter: DIAMETER, points });
    expect(psi[0] + psi[1] * 0.08 + psi[2] * 0.08 ** 2).toBeCloseToRelative(0.9, 1e-6);
  });
});

describe("fitRotor, on exact readings", () => {
  it("recovers a quadratic and takes degree 2 though 3 and 4 fit as well", () => {
    const phis = Array.from({ length: 15 }, (_, i) => i * 0.015);
    const fit = fitRotor({
      diameter: DIAMETER,
      points: exact((phi) => 0.9 - 0.3 * phi - 15 * phi ** 2, phis),
    });
    expect(fit.degree).toBe(2);
    [0.9, -0.3, -15].forEach((c, j) => {
      expect(fit.psi[j]).toBeCloseToRelative(c, 1e-9);
    });
    expect(fit.outliers).toEqual([]);
    expectAllFinite(fit);
  });

  it.each([
    { rise: 0.5, stall: true },
    { rise: -0.5, stall: false },
  ])("a slope of $rise at no flow is stall: $stall", ({ rise, stall }) => {
    const fit = fitRotor({ diameter: DIAMETER, points: exact((phi) => 0.9 + rise * phi - 20 * phi ** 2) });
    expect(fit.stall).toBe(stall);
    expect(fit.warnings.some(({ code }) => code === "stall")).toBe(stall);
  });

  it("finds λ from the readings with shaft power, and none without", () => {
    const points = PHIS.map((phi) => readingAt({ phi, psi: 1 - 20 * phi ** 2, lambda: 0.05 + 0.6 * phi }));
    const { lambda } = fitRotor({ diameter: DIAMETER, points });
    expect(lambda?.[0]).toBeCloseToRelative(0.05, 1e-6);
    expect(lambda?.[1]).toBeCloseToRelative(0.6, 1e-6);
    expect(fitRotor({ diameter: DIAMETER, points: noisy }).lambda).toBeNull();
    const onlyOne = fitRotor({
      diameter: DIAMETER,
      points: [points[0], ...points.slice(1).map((p) => ({ ...p, shaftPower: undefined }))],
    });
    expect(onlyOne.lambda).toBeNull();
    expect(onlyOne.warnings.map(({ code }) => code)).toContain("shaft-power-at-one-flow");
  });

  it("takes the density of standard air, 1.2 kg/m³, where none is given", () => {
    const bare = PHIS.map((phi) => ({ ...readingAt({ phi, psi: 1 - 20 * phi ** 2 }), density: undefined }));
    expect(fitRotor({ diameter: DIAMETER, points: bare }).psi[0]).toBeCloseToRelative(1, 1e-9);
  });
});

describe("fitRotor, with one reading off the curve", () => {
  it("names it as an outlier and keeps it in the fit", () => {
    const points = Array.from({ length: 16 }, (_, i) => {
      const phi = 0.012 * i;
      const wobble = 0.002 * Math.sin(7 * i);
      return readingAt({ phi, psi: 1 - 20 * phi ** 2 + wobble + (i === 6 ? 0.05 : 0) });
    });
    const fit = fitRotor({ diameter: DIAMETER, points });
    expect(fit.outliers).toEqual([6]);
    expect(fit.dof).toBe(16 - fit.degree - 1);
    expect(fit.warnings.map(({ code }) => code)).toContain("outliers");
  });
});

describe("fitRotor, leave-one-out", () => {
  it("equals the miss of fits that were really made without each point", () => {
    const fit = fitRotor({ diameter: DIAMETER, points: noisy, degree: 2 });
    const squares = noisy.map((_, i) => {
      const { psi } = fitRotor({
        diameter: DIAMETER,
        points: noisy.filter((_unused, j) => j !== i),
        degree: 2,
      });
      return (NOISY[i] - psi[0] - psi[1] * PHIS[i] - psi[2] * PHIS[i] ** 2) ** 2;
    });
    const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
    expect(fit.leaveOneOutSd).toBeCloseToRelative(Math.sqrt(mean), 1e-6);
  });
});

describe("fitRotor, on few readings", () => {
  const at = (phi: number, psi: number) => readingAt({ phi, psi });

  it("blocked and open alone give the parabola, marked two-point, with its uncertainty unknown", () => {
    const fit = fitRotor({ diameter: DIAMETER, points: [at(0, 0.8), at(0.2, 0)] });
    expect(fit.psi[0]).toBeCloseToRelative(0.8, 1e-12);
    expect(fit.psi[1]).toBe(0);
    expect(fit.psi[2]).toBeCloseToRelative(-20, 1e-9);
    expect(fit.warnings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["two-point", "no-residual"]),
    );
    expect(fit.covariance).toEqual([]);
    expectAllFinite(fit);
  });

  it("repeats at two flows give the same parabola through their means, with a residual", () => {
    const points = [at(0, 0.81), at(0, 0.79), at(0.2, 0.01), at(0.2, -0.01)];
    const fit = fitRotor({ diameter: DIAMETER, points });
    expect(fit.psi[0]).toBeCloseToRelative(0.8, 1e-9);
    expect(fit.dof).toBe(2);
    expect(fit.residualSd).toBeCloseToRelative(Math.sqrt(4e-4 / 2), 1e-9);
    expect(fit.covariance[0]).toHaveLength(3);
  });

  // a parabola through three points, by hand: 0.8 − 1.5φ − 10φ²
  it("three readings give the parabola through them, say that they are too few to choose, and leave no residual", () => {
    const fit = fitRotor({ diameter: DIAMETER, points: [at(0, 0.8), at(0.1, 0.55), at(0.2, 0.1)] });
    [0.8, -1.5, -10].forEach((c, j) => {
      expect(fit.psi[j]).toBeCloseToRelative(c, 1e-9);
    });
    expect(fit.aicc).toBeNull();
    expect(fit.dof).toBe(0);
    expect(fit.reason).toMatch(/3 flows are too few/);
    const codes = fit.warnings.map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(["few-flows", "no-residual"]));
    expect(codes).not.toContain("degree-high");
    expectAllFinite(fit);
  });

  it.each([
    [3, 1],
    [4, 1],
    [5, 1],
    [4, 5],
    [5, 4],
  ])("%i flows, each read %i times: degree 2, and the parabola comes back", (flows, times) => {
    const phis = Array.from({ length: flows * times }, (_, i) => (0.2 * (i % flows)) / (flows - 1));
    const fit = fitRotor({
      diameter: DIAMETER,
      points: exact((phi) => 0.9 - 0.3 * phi - 15 * phi ** 2, phis),
    });
    expect(fit.degree).toBe(2);
    [0.9, -0.3, -15].forEach((c, j) => {
      expect(fit.psi[j]).toBeCloseToRelative(c, 1e-9);
    });
    expect(fit.dof).toBe(flows * times - 3);
    expect(fit.warnings.map(({ code }) => code)).toContain("few-flows");
  });

  it("six flows and more let the readings choose, and are no few flows", () => {
    const bent = (phi: number) => 0.9 + phi - 30 * phi ** 2 + 40 * phi ** 3;
    const phis = Array.from({ length: 9 }, (_, i) => 0.025 * i);
    const fit = fitRotor({ diameter: DIAMETER, points: exact(bent, phis) });
    expect(fit.degree).toBe(3);
    expect(fit.reason).toMatch(/degree 3 has the lowest AICc \(2: -\d+\.\d, 3: -\d+\.\d\); 3 is the highest/);
    expect(fit.warnings.map(({ code }) => code)).not.toContain("few-flows");
    const six = fitRotor({ diameter: DIAMETER, points: exact(bent, phis.slice(0, 6)) });
    expect(six.warnings.map(({ code }) => code)).not.toContain("few-flows");
    expect(six.degree).toBe(2);
  });

  // Noise of 2 % of blocked pressure, signs as they come; AICc over degrees from 1 up takes the line here and reads ψ(0.1) 12 % low.
  it("six noisy readings of a parabola give no straight line", () => {
    const off = [1, -1, 1, 1, -1, 1];
    const points = off.map((sign, i) => at(0.04 * i, 0.9 - 20 * (0.04 * i) ** 2 + 0.018 * sign));
    const { degree, psi } = fitRotor({ diameter: DIAMETER, points });
    expect(degree).toBe(2);
    expect(Math.abs(psi[0] + 0.1 * psi[1] + 0.01 * psi[2] - 0.7)).toBeLessThan(0.018);
  });

  it("λ of three flows is a parabola as well; of two, the line through them", () => {
    const power = (phi: number) => 0.02 + 0.9 * phi - 1.5 * phi ** 2;
    const read = (phis: readonly number[]) => [
      ...phis.map((phi) => readingAt({ phi, psi: 0.9 - 15 * phi ** 2, lambda: power(phi) })),
      ...[0.03, 0.06, 0.13].map((phi) => at(phi, 0.9 - 15 * phi ** 2)),
    ];
    const three = fitRotor({ diameter: DIAMETER, points: read([0, 0.1, 0.2]) }).lambda;
    [0.02, 0.9, -1.5].forEach((c, j) => {
      expect(three?.[j]).toBeCloseToRelative(c, 1e-9);
    });
    const two = fitRotor({ diameter: DIAMETER, points: read([0, 0.2]) }).lambda;
    expect(two).toHaveLength(2);
    expect(two?.[1]).toBeCloseToRelative(0.6, 1e-9);
  });

  const need = (points: RotorReadingPoint[], degree?: number) => () =>
    fitRotor({ diameter: DIAMETER, points, degree });
  it.each([
    ["one point", need([at(0, 0.8)])],
    ["all points at one flow", need([at(0.1, 0.8), at(0.1, 0.7), at(0.1003, 0.75)])],
    ["all points blocked", need([at(0, 0.8), at(0, 0.7)])],
    ["two flows with rising pressure", need([at(0, 0.5), at(0.1, 0.6)])],
    ["fewer flows than the degree asked for", need([at(0, 0.8), at(0.1, 0.6), at(0.2, 0.1)], 3)],
    ["ports swapped", need([at(0, -0.8), at(0.1, -0.6), at(0.2, -0.1)])],
  ])("%s: refused, with what to measure next", (_, call) => {
    expect(call).toThrow(NotEnoughDataError);
    expect(call).toThrow(/Take|ask/);
  });

  it.each([
    ["rpm", 0],
    ["rpm", Number.NaN],
    ["flow", -1e-6],
    ["pressure", Number.NaN],
    ["density", 0],
    ["weight", 0],
    ["shaftPower", -1],
    ["diameter", 0],
  ])("a %s of %s is refused by its path", (key, value) => {
    const points = noisy.map((p, i) => (i === 2 ? { ...p, [key]: value } : p));
    expectOutOfRange(() => fitRotor({ diameter: DIAMETER, points }), `points.2.${key}`);
  });

  it("the same pressure at every flow and repeated rows give an answer without NaN", () => {
    const flat = fitRotor({ diameter: DIAMETER, points: PHIS.map((phi) => at(phi, 0.5)) });
    expect(flat.warnings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["no-variation", "no-free-flow"]),
    );
    expectAllFinite(flat);
    expectAllFinite(fitRotor({ diameter: DIAMETER, points: [...noisy, ...noisy, ...noisy] }));
  });

  it("pressures below zero past the open end stay in the fit and are said", () => {
    const fit = fitRotor({
      diameter: DIAMETER,
      points: [...PHIS, 0.24, 0.26].map((phi) => at(phi, 1 - 20 * phi ** 2)),
    });
    expect(fit.psi[2]).toBeCloseToRelative(-20, 1e-6);
    expect(fit.warnings.map(({ code }) => code)).toContain("negative-pressure");
  });
});
