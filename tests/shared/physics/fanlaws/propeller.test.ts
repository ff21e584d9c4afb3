import { describe, expect, it } from "vitest";
import {
  propellerCoefficients,
  propellerReynolds,
  propellerUnits,
} from "#shared/physics/fanlaws/propeller.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

/** 100 turns a second, 0.1 m, 1.2 kg/m³: ρn²D⁴ = 1.2 N, ρn³D⁵ = 12 W by hand. */
const state = { diameter: 0.1, speed: 200 * Math.PI, density: 1.2 };

describe("propeller coefficients, at 100 turns a second", () => {
  it("are thrust over ρn²D⁴ and power over ρn³D⁵", () => {
    const { thrust, power } = propellerCoefficients({ thrust: 0.18, shaftPower: 0.96 }, state);
    expect(thrust).toBeCloseToRelative(0.15, 1e-12);
    expect(power).toBeCloseToRelative(0.08, 1e-12);
    expect(propellerCoefficients({ thrust: 0.18, shaftPower: null }, state).power).toBeNull();
  });

  it("have units that grow with n² and n³, D⁴ and D⁵", () => {
    const one = propellerUnits(state);
    const fast = propellerUnits({ ...state, speed: 2 * state.speed });
    const large = propellerUnits({ ...state, diameter: 2 * state.diameter });
    expect(fast.thrust / one.thrust).toBeCloseToRelative(4, 1e-12);
    expect(fast.power / one.power).toBeCloseToRelative(8, 1e-12);
    expect(large.thrust / one.thrust).toBeCloseToRelative(16, 1e-12);
    expect(large.power / one.power).toBeCloseToRelative(32, 1e-12);
  });

  it("have a Reynolds number at three quarters of the tip speed", () => {
    // 0.75 · 10π m/s · 0.01 m · 1.2 / 1.8e-5
    expect(propellerReynolds(state, 0.01, 1.8e-5)).toBeCloseToRelative(5000 * Math.PI, 1e-12);
  });
});

describe("propeller coefficients, of what can't be", () => {
  it("names the number", () => {
    const reading = { thrust: 0.1, shaftPower: 1 };
    expectOutOfRange(() => propellerCoefficients(reading, { ...state, diameter: 0 }), "rotor.diameter");
    expectOutOfRange(() => propellerCoefficients(reading, { ...state, speed: 0 }), "speed");
    expectOutOfRange(() => propellerCoefficients(reading, { ...state, density: 0 }), "air.density");
    expectOutOfRange(() => propellerCoefficients({ ...reading, thrust: Number.NaN }, state), "thrust");
    expectOutOfRange(() => propellerCoefficients({ ...reading, shaftPower: -1 }, state), "shaftPower");
    expectOutOfRange(() => propellerReynolds(state, 0, 1.8e-5), "rotor.chord");
    expectOutOfRange(() => propellerReynolds(state, 0.01, Number.NaN), "air.viscosity");
  });
});
