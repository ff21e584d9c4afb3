import { describe, expect, it } from "vitest";
import { solvedSuctions, tracedSuctions } from "#shared/fit/calibration/suctions.ts";
import { chebyshevInterpolant } from "#shared/numeric/chebyshevInterpolant.ts";
import { assemble } from "#shared/physics/assembly.ts";
import { operatingPoints } from "#shared/physics/operatingPoint.ts";
import type { PredictInput } from "#shared/physics/predict.ts";
import { RIG, rigAt } from "#tests/support/calibrationRig.ts";

const GAPS = Array.from({ length: 65 }, (_, i) => (i * 1.5e-3) / 64);

const withSkirt = (change: Partial<PredictInput["skirt"]>): PredictInput => ({
  ...RIG,
  skirt: { ...RIG.skirt, ...change },
});

/** Forces agree to this, relative: the quick way may not change what a calibration answers. */
const AGREE = 1e-9;

describe("suction forces over the gap, traced along the curve", () => {
  it.each<[string, PredictInput]>([
    ["the plain rig", RIG],
    ["a low voltage", rigAt(2.5)],
    ["no roughness, sealed at a gap of 0", withSkirt({ roughness: 0 })],
    ["openings beside the lip", withSkirt({ openings: [{ area: 2e-5, dischargeCoefficient: 0.61 }] })],
    ["a wide land, where the gap's flow turns rough", withSkirt({ land: 0.012 })],
    ["a winding that warms", { ...RIG, motor: { ...RIG.motor, thermalResistance: 20 } }],
    [
      "a size that is corrected by the Reynolds number",
      {
        ...RIG,
        rotor: {
          ...RIG.rotor,
          sizeCorrection: {
            testedDiameter: 0.05,
            testedTipSpeed: 60,
            testedDensity: 1.2,
            testedViscosity: 1.81e-5,
          },
        },
      },
    ],
    ["a jet", { ...RIG, vehicle: { ...RIG.vehicle, jetArea: 8e-4 } }],
  ])("with %s: the same as by a balance of torques at each gap", (_, input) => {
    const [traced, solved] = [tracedSuctions(input, GAPS), solvedSuctions(input, GAPS)];
    expect(traced).not.toBeNull();
    solved.forEach((force, i) => {
      expect(traced?.[i]).toBeCloseToRelative(force, AGREE);
    });
  });

  it("with a motor that does not turn: null, the solved way answers 0", () => {
    expect(tracedSuctions(rigAt(1e-4), GAPS)).toBeNull();
    expect(solvedSuctions(rigAt(1e-4), GAPS)).toEqual(GAPS.map(() => 0));
  });

  it("with a curve that meets the leak three times at the widest gap: null, so that every point is solved by itself", () => {
    const waved = { ...RIG, rotor: { ...RIG.rotor, psi: [0.5, -11.4167, 87.5, -183.3333] } };
    const meets = (gap: number) => {
      const { machine, leak } = assemble({ ...waved, skirt: { ...waved.skirt, gap } });
      return operatingPoints(machine, leak).length;
    };
    const widest = Array.from({ length: 100 }, (_, i) => 2e-3 + i * 2e-5).find((gap) => meets(gap) === 3);
    expect(widest).toBeDefined();
    const near = GAPS.map((_, i) => (widest ?? 0) * (1 - (64 - i) * 1e-4));
    expect(tracedSuctions(waved, near)).toBeNull();
    const before = near.map((gap) => gap - 2e-4);
    expect(meets(before[64])).toBe(1);
    expect(tracedSuctions(waved, before)).not.toBeNull();
  });
});

describe("a Chebyshev interpolant", () => {
  it("of a smooth function: as close as asked, from few places", () => {
    let asked = 0;
    const f = (x: number) => {
      asked += 1;
      return Math.exp(-x) * Math.cos(3 * x);
    };
    const p = chebyshevInterpolant(f, -1, 2, 1e-10);
    expect(asked).toBeLessThan(70);
    for (let x = -1; x <= 2; x += 0.013) expect(Math.abs((p?.(x) ?? 9) - f(x))).toBeLessThan(1e-9);
  });

  it("of a polynomial of degree 6: exact, at the places themselves as well", () => {
    const f = (x: number) => 3 - x + 2 * x ** 6;
    const p = chebyshevInterpolant(f, 0, 1, 1e-12);
    for (const x of [0, 0.3, 0.5, 1]) expect(p?.(x)).toBeCloseToRelative(f(x), 1e-12);
  });

  it("of a function with a kink, or one that is nowhere finite: null", () => {
    expect(chebyshevInterpolant((x) => Math.abs(x - 0.31), 0, 1, 1e-10)).toBeNull();
    expect(chebyshevInterpolant(() => Number.NaN, 0, 1, 1e-10)).toBeNull();
  });

  it.each([
    [1, 1, 1e-9],
    [0, Number.POSITIVE_INFINITY, 1e-9],
    [0, 1, 0],
    [Number.NaN, 1, 1e-9],
  ])("between %f and %f to %f: refused", (lo, hi, tolerance) => {
    expect(() => chebyshevInterpolant(Math.sin, lo, hi, tolerance)).toThrow(/must be|finite|greater/);
  });
});
