import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ackeretEfficiency, rotorReynolds, sizeCorrectionFactor } from "#shared/physics/fanlaws/size.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

describe("size correction", () => {
  it("at the tested Reynolds number is exactly none", () => {
    expect(sizeCorrectionFactor(0.45, 3e4, 3e4)).toBeCloseTo(1, 15);
  });

  it("is above 1 for larger rotors and below 1 for smaller ones", () => {
    expect(sizeCorrectionFactor(0.45, 3e4, 6e4)).toBeGreaterThan(1);
    expect(sizeCorrectionFactor(0.45, 3e4, 1.5e4)).toBeLessThan(1);
  });

  // Half of the losses never shrink: η₂ → ½(1 + η₁) at infinite Re.
  it("of an endless Reynolds number takes away half of the losses at most", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), (efficiency) => {
        expect(ackeretEfficiency(efficiency, 1, 1e60)).toBeCloseToRelative((1 + efficiency) / 2, 1e-9);
      }),
    );
  });

  it("refuses efficiencies beyond 0…1, no Reynolds number, and one that leaves nothing", () => {
    expectOutOfRange(() => sizeCorrectionFactor(0, 1, 1), "peak efficiency");
    expectOutOfRange(() => sizeCorrectionFactor(1, 1, 1), "peak efficiency");
    expectOutOfRange(() => sizeCorrectionFactor(Number.NaN, 1, 1), "peak efficiency");
    expectOutOfRange(() => sizeCorrectionFactor(0.5, 0, 1), "testedReynolds");
    expectOutOfRange(() => sizeCorrectionFactor(0.5, 1, 0), "reynolds");
    expectOutOfRange(() => sizeCorrectionFactor(0.3, 1e9, 1), "rotor.sizeCorrection");
  });
});

describe("Reynolds number of a rotor", () => {
  it("of 42 mm at 66 m/s in room air is about 184 000", () => {
    expect(rotorReynolds(66, 0.042, 1.2, 1.81e-5)).toBeCloseToRelative((66 * 0.042 * 1.2) / 1.81e-5, 1e-14);
  });

  it.each([
    ["rotor.tipSpeed", [0, 1, 1, 1]],
    ["rotor.diameter", [1, 0, 1, 1]],
    ["air.density", [1, 1, 0, 1]],
    ["air.viscosity", [1, 1, 1, 0]],
  ] as const)("refuses by %s", (quantity, [u, d, rho, mu]) => {
    expectOutOfRange(() => rotorReynolds(u, d, rho, mu), quantity);
  });
});
