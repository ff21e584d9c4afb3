import { describe, expect, it } from "vitest";
import { sizeLaw } from "#shared/physics/point/sizeLaw.ts";

const AIR = { density: 1.2, viscosity: 1.81e-5 };
const TESTED = { testedDiameter: 0.1, testedTipSpeed: 60 };
const SHAPE = { diameter: 0.04, psi: [1, 0, -40], lambda: [0.02, 0.9], phiMax: 0.15 };
const factorOf = (sizeCorrection: object | null) =>
  sizeLaw(
    { ...SHAPE, sizeCorrection: sizeCorrection && { ...TESTED, ...sizeCorrection } },
    0.158,
    AIR,
  ).factor(50);

describe("the size law, as much of it as is applied", () => {
  const whole = factorOf({}) - 1;

  it("whole unless something is said, to the last digit", () => {
    expect(whole).not.toBe(0);
    expect(factorOf({ applied: 1 }) - 1).toBe(whole);
  });

  it.each([0.5, 2, -0.5])("%s of it: that much of what the whole changes", (applied) => {
    expect(factorOf({ applied }) - 1).toBeCloseToRelative(applied * whole, 1e-12);
  });

  it("none of it: 1", () => {
    expect(factorOf({ applied: 0 })).toBe(1);
  });

  it("at the tested Reynolds number: none, however much is applied", () => {
    const { factor } = sizeLaw(
      { ...SHAPE, diameter: 0.1, sizeCorrection: { ...TESTED, applied: 3 } },
      0.158,
      AIR,
    );
    expect(factor(60)).toBe(1);
  });
});
