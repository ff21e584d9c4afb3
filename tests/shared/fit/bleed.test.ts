import { describe, expect, it } from "vitest";
import { bleedFlow } from "#shared/fit/bleed.ts";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import { holeFlow } from "#shared/physics/restriction/hole.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const air = { density: 1.2, viscosity: 1.81e-5, pressure: 101_325 };
const small = { diameter: 3e-3, thickness: 1e-3, count: 4 };
const large = { diameter: 8e-3, thickness: 1e-3, count: 2 };

describe("bleedFlow, through two kinds of hole", () => {
  it("adds their flows", () => {
    const both = bleedFlow({ holes: [small, large], air, pressure: 300 });
    const each = [small, large].map((kind) => holeFlow(kind, air, 300).flow);
    expect(both.flow).toBeCloseToRelative(each[0] + each[1], 1e-12);
  });

  it("lies near 0.6 of Torricelli's flow for thin sharp holes", () => {
    // Common practice, no source: C_d about 0.6.
    const { dischargeCoefficient, flow } = bleedFlow({
      holes: [{ ...large, thickness: 5e-4 }],
      air,
      pressure: 300,
    });
    expect(dischargeCoefficient).toBeGreaterThan(0.58);
    expect(dischargeCoefficient).toBeLessThan(0.66);
    const torricelli = 2 * (Math.PI / 4) * 8e-3 ** 2 * Math.sqrt(600 / 1.2);
    expect(flow).toBeCloseToRelative(dischargeCoefficient * torricelli, 2e-3);
  });

  it("takes the holes' doubts as shared and half the pressure's relative uncertainty on top", () => {
    const plain = bleedFlow({ holes: [large], air, pressure: 300 });
    const more = bleedFlow({ holes: [large, { ...large, count: 5 }], air, pressure: 300 });
    expect(more.uncertainty).toBeCloseToRelative(plain.uncertainty, 1e-12);
    const withReading = bleedFlow({ holes: [large], air, pressure: 300, pressureUncertainty: 30 });
    expect(withReading.uncertainty).toBeCloseToRelative(Math.hypot(plain.uncertainty, 0.05), 1e-12);
  });

  it("a calibrated plate has the uncertainty of its calibration", () => {
    const holes = [{ ...large, dischargeCoefficient: 0.62 }];
    expect(bleedFlow({ holes, air, pressure: 300 }).uncertainty).toBe(0);
    const calibrated = bleedFlow({ holes, air, pressure: 300, calibrationUncertainty: 0.02 });
    expect(calibrated.uncertainty).toBeCloseToRelative(0.02, 1e-12);
    expect(calibrated.dischargeCoefficient).toBeCloseToRelative(0.62, 1e-12);
  });

  it("is exactly 0 at no pressure, doubt and all", () => {
    const { flow, uncertainty } = bleedFlow({ holes: [small], air, pressure: 0, pressureUncertainty: 1 });
    expect([flow, uncertainty]).toEqual([0, 0]);
  });
});

describe("bleedFlow, on a plate that can't be", () => {
  it("no holes are refused", () => {
    expect(() => bleedFlow({ holes: [], air, pressure: 100 })).toThrow(NotEnoughDataError);
  });
  it("a hole too long for its bore is refused by its place in the list", () => {
    const tube = { ...small, thickness: 0.2 };
    expectOutOfRange(() => bleedFlow({ holes: [small, tube], air, pressure: 100 }), "holes.1.thickness");
  });
  it("a negative pressure is refused", () => {
    expectOutOfRange(() => bleedFlow({ holes: [small], air, pressure: -1 }), "pressure");
  });
});
