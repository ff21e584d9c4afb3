import { describe, expect, it } from "vitest";
import { fallingEnergy, fallingSpeed, fragmentEnergy } from "#shared/physics/limits/energy.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

describe("energies that can hurt", () => {
  it("of a tenth of a gram from 20 mm at 3000 rad/s is that of 60 m/s", () => {
    expect(fragmentEnergy(1e-4, 0.02, 3000)).toBeCloseToRelative(0.5 * 1e-4 * 60 ** 2, 1e-14);
  });

  it("of a fall is that of the speed on landing", () => {
    expect(fallingEnergy(0.18, 4)).toBeCloseToRelative(0.5 * 0.18 * fallingSpeed(4) ** 2, 1e-14);
    expect(fallingEnergy(0.18, 4)).toBeCloseToRelative(0.18 * 9.80665 * 4, 1e-14);
  });

  it("of nothing or from no height are exactly none", () => {
    expect(fragmentEnergy(0, 0.02, 3000)).toBe(0);
    expect(fallingEnergy(0.18, 0)).toBe(0);
    expect(fallingSpeed(0)).toBe(0);
  });

  it("refuse numbers below 0", () => {
    expectOutOfRange(() => fragmentEnergy(-1, 1, 1), "mass");
    expectOutOfRange(() => fragmentEnergy(1, -1, 1), "radius");
    expectOutOfRange(() => fragmentEnergy(1, 1, Number.NaN), "speed");
    expectOutOfRange(() => fallingEnergy(-1, 1), "mass");
    expectOutOfRange(() => fallingEnergy(1, -1), "height");
    expectOutOfRange(() => fallingSpeed(-1), "height");
  });
});
