import { describe, expect, it } from "vitest";
import { fitRideHeight, heightUnder, USUAL_GAUGE } from "#shared/fit/rideHeightFit.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { expectAllFinite } from "#tests/support/finite.ts";
import { readNistLinearSet } from "#tests/support/nistData.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const point = (load: number, height: number, test?: number) => ({ load, height, test });
const codes = (points: ReturnType<typeof point>[], heightUncertainty?: number) =>
  fitRideHeight({ points, heightUncertainty }).warnings.map(({ code }) => code);

describe("fitRideHeight, on two readings", () => {
  // By hand: k = ΔN/Δh; each height good to g gives u(slope) = √2·g/ΔN, u(k) = k²·u(slope).
  const fit = fitRideHeight({ points: [point(0, 8e-4), point(3, 5e-4)], heightUncertainty: 1e-5 });

  it("gives the line through them, its uncertainty by the gauge's own", () => {
    expect(fit.stiffness).toBeCloseToRelative(3 / 3e-4, 1e-12);
    expect(fit.heights).toEqual([expect.closeTo(8e-4, 15)]);
    expect(fit.standardErrors.stiffness).toBeCloseToRelative((1e4 ** 2 * Math.SQRT2 * 1e-5) / 3, 1e-12);
    expect(fit.standardErrors.height).toBeCloseToRelative(1e-5, 1e-12);
    expect([fit.dof, fit.residualSd]).toEqual([null, null]);
    expect(fit.warnings).toEqual([]);
  });

  it("counts the load's own uncertainty through the slope: √(g² + u²/k²)", () => {
    const loads = {
      points: [point(0, 8e-4), point(3, 5e-4)],
      heightUncertainty: 3e-6,
      loadUncertainty: 0.04,
    };
    const both = fitRideHeight(loads).standardErrors.stiffness;
    expect(both).toBeCloseToRelative((1e4 ** 2 * Math.SQRT2 * Math.hypot(3e-6, 0.04 / 1e4)) / 3, 1e-12);
  });

  it("takes a gauge of 0.02 mm where none is stated, and says so", () => {
    const points = [point(0, 8e-4), point(3, 5e-4)];
    const usual = fitRideHeight({ points });
    expect(usual.standardErrors.stiffness).toBeCloseToRelative(
      (1e4 ** 2 * Math.SQRT2 * USUAL_GAUGE) / 3,
      1e-12,
    );
    expect(codes(points)).toEqual(["usual-gauge"]);
  });
});

describe("fitRideHeight, on a line of many readings", () => {
  // Norris, linear set of the NIST Statistical Reference Datasets; its certified values are read from the file. Turned
  // over, a height that falls with the load.
  const { x, y, coefficients, standardErrors, residualSd } = readNistLinearSet("Norris");
  const top = 2000;
  const points = x.map(([load], i) => point(load, top - y[i]));
  const fit = fitRideHeight({ points, heightUncertainty: 1e-9 });

  it("gives the certified slope, its uncertainty by the scatter", () => {
    expect(1 / fit.stiffness).toBeCloseToRelative(coefficients[1], 1e-12);
    expect(fit.standardErrors.stiffness / fit.stiffness ** 2).toBeCloseToRelative(standardErrors[1], 1e-10);
    expect(fit.heights[0]).toBeCloseToRelative(top - coefficients[0], 1e-12);
    expect(fit.standardErrors.height).toBeCloseToRelative(standardErrors[0], 1e-10);
    expect(fit.residualSd).toBeCloseToRelative(residualSd, 1e-10);
    expect(fit.dof).toBe(34);
  });

  it("falls back on the gauge where it is the coarser", () => {
    const coarse = fitRideHeight({ points, heightUncertainty: 2 * residualSd });
    expect(coarse.dof).toBeNull();
    expect(coarse.standardErrors.stiffness / fit.standardErrors.stiffness).toBeCloseToRelative(2, 1e-9);
  });
});

describe("fitRideHeight, on several tests", () => {
  it("of one running gear set at different heights: one stiffness, a height each", () => {
    const points = [point(0, 8e-4, 0), point(2, 6e-4, 0), point(0, 1.1e-3, 1), point(4, 7e-4, 1)];
    const fit = fitRideHeight({ points });
    expect(fit.stiffness).toBeCloseToRelative(1e4, 1e-12);
    expect(fit.heights).toEqual([expect.closeTo(8e-4, 12), expect.closeTo(1.1e-3, 12)]);
  });
});

describe("heightUnder", () => {
  const fit = fitRideHeight({ points: [point(0, 8e-4), point(3, 5e-4)], heightUncertainty: 1e-5 });

  // By hand: at a reading's own load the line through two points is as good as that reading, g; in their middle g/√2.
  it("follows the line; as good as a reading at its load, better between the two, worse beyond", () => {
    expect(heightUnder(fit, 3).height).toBeCloseToRelative(5e-4, 1e-12);
    expect(heightUnder(fit, 0).error).toBeCloseToRelative(1e-5, 1e-12);
    expect(heightUnder(fit, 3).error).toBeCloseToRelative(1e-5, 1e-12);
    expect(heightUnder(fit, 1.5).error).toBeCloseToRelative(1e-5 / Math.SQRT2, 1e-12);
    expect(heightUnder(fit, 6).error).toBeCloseToRelative(1e-5 * Math.sqrt(5), 1e-12);
  });
});

describe("fitRideHeight, notes", () => {
  it("a skirt that touches lies on no line: the same stiffness without it", () => {
    const points = [point(0, 8e-4), point(3, 5e-4), point(9, 0)];
    expect(fitRideHeight({ points }).stiffness).toBeCloseToRelative(1e4, 1e-12);
    expect(codes(points)).toContain("skirt-touched");
  });

  it("tyres that stiffen: heights that bend by more than the gauge leaves open", () => {
    const bent = [0, 1, 2, 3, 4, 5].map((load) => point(load, 1e-3 - 2e-4 * load + 1.5e-5 * load ** 2));
    const noise = [1, -1, 0, 1, 0, -1].map((n) => n * 1e-6);
    const read = bent.map(({ load, height }, i) => point(load, height + noise[i]));
    expect(codes(read, 2e-6)).toContain("bent-line");
    expect(codes(read, 2e-4)).not.toContain("bent-line");
  });

  it("heights that hardly differ: rough", () => {
    expect(codes([point(0, 8e-4), point(3, 7.7e-4)], 1e-5)).toEqual(["rough-stiffness"]);
  });
});

describe("fitRideHeight, on readings that can't answer", () => {
  it.each([
    ["one load", [point(2, 5e-4), point(2, 5.1e-4)]],
    ["one load a test", [point(2, 5e-4, 0), point(3, 5e-4, 1)]],
    ["the skirt always touches", [point(0, 0), point(3, 0)]],
    ["no reading", []],
  ])("%s: refused, with what to measure", (_, points) => {
    expect(() => fitRideHeight({ points })).toThrow(NotEnoughDataError);
    expect(() => fitRideHeight({ points })).toThrow(/two loads or more/);
  });

  it.each([
    ["rises", [point(0, 5e-4), point(3, 6e-4)]],
    ["stays", [point(0, 5e-4), point(3, 5e-4)]],
  ])("a lip that %s under load: refused", (_, points) => {
    expect(() => fitRideHeight({ points })).toThrow(/does not come down/);
  });

  it.each([
    ["points.1.load", { points: [point(0, 5e-4), point(Number.NaN, 4e-4)] }],
    ["points.0.height", { points: [point(0, -1e-4), point(1, 4e-4)] }],
    ["heightUncertainty", { points: [point(0, 5e-4), point(1, 4e-4)], heightUncertainty: 0 }],
    ["loadUncertainty", { points: [point(0, 5e-4), point(1, 4e-4)], loadUncertainty: -1 }],
  ])("names %s", (path, request) => {
    expectOutOfRange(() => fitRideHeight(request), path);
  });

  it("gives finite numbers for anything that it answers", () => {
    expectAllFinite(fitRideHeight({ points: [point(-1, 9e-4), point(0, 8e-4), point(3, 5e-4)] }));
  });
});
