import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluatePolynomial } from "#shared/numeric/polynomial.ts";
import { coefficientsOf, readingOf, tipSpeed, twoPointCurve } from "#shared/physics/fanlaws/coefficients.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const state = { diameter: 0.042, speed: 3000, density: 1.2 };
const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const states = fc.record({
  diameter: positive(0.01, 0.5),
  speed: positive(10, 10_000),
  density: positive(0.5, 1.5),
});
const readings = fc.record({
  flow: positive(1e-6, 1),
  pressure: positive(0.1, 1e4),
  shaftPower: positive(1e-3, 1e3),
});

describe("coefficients of a reading", () => {
  it("give the reading back at its own state", () => {
    fc.assert(
      fc.property(readings, states, (reading, at) => {
        const back = readingOf(coefficientsOf(reading, at), at);
        expect(back.flow).toBeCloseToRelative(reading.flow, 1e-13);
        expect(back.pressure).toBeCloseToRelative(reading.pressure, 1e-13);
        expect(back.shaftPower ?? Number.NaN).toBeCloseToRelative(reading.shaftPower, 1e-13);
      }),
    );
  });

  // Fan laws: Q ∝ nD³, Δp ∝ ρn²D², P ∝ ρn³D⁵.
  it("carry a reading to any other state by the fan laws", () => {
    fc.assert(
      fc.property(readings, states, states, (reading, from, to) => {
        const scaled = readingOf(coefficientsOf(reading, from), to);
        const [n, d, rho] = [to.speed / from.speed, to.diameter / from.diameter, to.density / from.density];
        expect(scaled.flow).toBeCloseToRelative(reading.flow * n * d ** 3, 1e-12);
        expect(scaled.pressure).toBeCloseToRelative(reading.pressure * rho * n ** 2 * d ** 2, 1e-12);
        expect(scaled.shaftPower ?? Number.NaN).toBeCloseToRelative(
          reading.shaftPower * rho * n ** 3 * d ** 5,
          1e-12,
        );
      }),
    );
  });

  it("keep the efficiency QΔp/P of the reading", () => {
    fc.assert(
      fc.property(readings, states, (reading, at) => {
        const { efficiency } = coefficientsOf(reading, at);
        const expected = (reading.flow * reading.pressure) / reading.shaftPower;
        expect(efficiency ?? Number.NaN).toBeCloseToRelative(expected, 1e-12);
      }),
    );
  });

  it("without shaft power have neither λ nor η, without any power no η", () => {
    const blocked = { flow: 0, pressure: 700, shaftPower: null };
    expect(coefficientsOf(blocked, state)).toMatchObject({ phi: 0, lambda: null, efficiency: null });
    expect(readingOf({ phi: 0.1, psi: 0.5, lambda: null }, state).shaftPower).toBeNull();
    expect(coefficientsOf({ ...blocked, shaftPower: 0 }, state)).toMatchObject({
      lambda: 0,
      efficiency: null,
    });
  });

  it.each([
    ["flow", { flow: -1 }],
    ["pressure", { pressure: Number.NaN }],
    ["shaftPower", { shaftPower: -1 }],
  ])("refuse by %s a reading of %o", (quantity, change) => {
    const reading = { flow: 1e-3, pressure: 500, shaftPower: 3, ...change };
    expectOutOfRange(() => coefficientsOf(reading, state), quantity);
  });

  it.each([
    ["rotor.diameter", { diameter: 0 }],
    ["speed", { speed: 0 }],
    ["air.density", { density: Number.NaN }],
  ])("refuse by %s a state of %o", (quantity, change) => {
    const reading = { flow: 1e-3, pressure: 500, shaftPower: 3 };
    expectOutOfRange(() => coefficientsOf(reading, { ...state, ...change }), quantity);
    expectOutOfRange(() => readingOf({ phi: 0.1, psi: 0.5, lambda: 0.1 }, { ...state, ...change }), quantity);
  });
});

describe("tip speed", () => {
  it("of 42 mm at 30 000 rpm is π·0.042·500", () => {
    expect(tipSpeed(0.042, (30_000 * 2 * Math.PI) / 60)).toBeCloseToRelative(Math.PI * 0.042 * 500, 1e-14);
  });

  it("refuses no diameter and a speed below 0", () => {
    expectOutOfRange(() => tipSpeed(0, 1), "rotor.diameter");
    expectOutOfRange(() => tipSpeed(1, -1), "speed");
  });
});

describe("two-point curve", () => {
  it("goes through its blocked and its open reading and falls between them", () => {
    const psi = twoPointCurve(0.9, 0.3);
    expect(evaluatePolynomial(psi, 0)).toBe(0.9);
    expect(Math.abs(evaluatePolynomial(psi, 0.3))).toBeLessThan(1e-15);
    expect(evaluatePolynomial(psi, 0.15)).toBeCloseToRelative(0.9 * 0.75, 1e-14);
  });

  it("refuses readings of nothing", () => {
    expectOutOfRange(() => twoPointCurve(0, 0.3), "psi0");
    expectOutOfRange(() => twoPointCurve(0.9, 0), "phiFree");
  });
});
