import { describe, expect, it } from "vitest";
import { gapFlow } from "#shared/physics/restriction/lipGap.ts";
import { leakCoefficientAt, measuredLeakFlow } from "#shared/physics/restriction/measuredLeak.ts";
import { openingFlow } from "#shared/physics/restriction/opening.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const tested = { density: 1.2, viscosity: 1.81e-5 };
const other = { density: 1.0, viscosity: 2.0e-5 };
const leak = { coefficient: 5e-5, exponent: 0.62, ...tested };

describe("measured leak", () => {
  it("at the test's own air keeps its coefficient exactly", () => {
    expect(leakCoefficientAt(leak, tested)).toBe(5e-5);
    expect(measuredLeakFlow(leak, tested, 250)).toBe(5e-5 * 250 ** 0.62);
  });

  // An opening has x = ½: its flow goes with ρ^(−½).
  it("with x = ½ moves to other air as an opening does", () => {
    const opening = { area: 3e-5 };
    const coefficient = openingFlow(opening, tested, 1);
    const moved = measuredLeakFlow({ coefficient, exponent: 0.5, ...tested }, other, 200);
    expect(moved).toBeCloseToRelative(openingFlow(opening, other, 200), 1e-14);
  });

  // Plane Poiseuille flow has x = 1: its flow goes with 1/μ.
  it("with x = 1 moves to other air as a laminar gap does", () => {
    const gap = { perimeter: 0.2, height: 5e-5, land: 0.01, lossSum: 0 };
    const coefficient = gapFlow(gap, tested, 1);
    const moved = measuredLeakFlow({ coefficient, exponent: 1, ...tested }, other, 20);
    expect(moved).toBeCloseToRelative(gapFlow(gap, other, 20), 1e-13);
  });

  it.each([
    ["measuredLeak.exponent", { exponent: 0.49 }],
    ["measuredLeak.exponent", { exponent: 1.01 }],
    ["measuredLeak.exponent", { exponent: Number.NaN }],
    ["measuredLeak.coefficient", { coefficient: 0 }],
    ["measuredLeak.density", { density: 0 }],
    ["measuredLeak.viscosity", { viscosity: Number.NaN }],
  ])("refuses by %s what is %o", (quantity, change) => {
    expectOutOfRange(() => measuredLeakFlow({ ...leak, ...change }, tested, 100), quantity);
  });

  it("refuses air that is none, a pressure below 0", () => {
    expectOutOfRange(() => leakCoefficientAt(leak, { density: 0, viscosity: 1 }), "air.density");
    expectOutOfRange(() => leakCoefficientAt(leak, { density: 1, viscosity: 0 }), "air.viscosity");
    expectOutOfRange(() => measuredLeakFlow(leak, tested, -1), "pressure");
  });
});
