import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NotEnoughDataError } from "#shared/numeric/errors.ts";
import {
  dutyFromReading,
  motorCurrent,
  openCircuitCurve,
  openCircuitVoltage,
  packCurrent,
  packResistance,
  packVoltage,
} from "#shared/physics/pack.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const pack = { series: 2, parallel: 3, cellResistance: 0.06, wireResistance: 0.02 };
const supply = {
  duty: 0.8,
  openCircuitVoltage: 7.6,
  packResistance: 0.06,
  driverResistance: 0.01,
  auxCurrent: 0.4,
};
const curve = [
  [0, 3],
  [0.1, 3.5],
  [0.5, 3.7],
  [1, 4.15],
] as const;

describe("pack resistance", () => {
  it("of two cells in series and three strings is 2/3 of a cell and the wires", () => {
    expect(packResistance(pack)).toBeCloseToRelative(0.06, 1e-14);
  });

  it.each([
    ["pack.series", { series: 0 }],
    ["pack.parallel", { parallel: 1.5 }],
    ["pack.cellResistance", { cellResistance: -1 }],
    ["pack.wireResistance", { wireResistance: Number.NaN }],
  ])("refuses by %s what is %o", (quantity, change) => {
    expectOutOfRange(() => packResistance({ ...pack, ...change }), quantity);
  });
});

describe("currents and voltages of the circuit", () => {
  const windingResistance = 0.3;
  const k = 2e-3;

  it("give back the duty that a motor is read at, from voltage, lead current and speed", () => {
    const duties = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(duties, fc.double({ min: 0, max: 0.95, noNaN: true }), (duty, share) => {
        const speed = (share * duty * 8) / k;
        const current = (duty * 8 - k * speed) / windingResistance;
        const reading = { voltage: 8, current: duty * current, speed };
        expect(dutyFromReading(reading, windingResistance, k)).toBeCloseToRelative(duty, 1e-9);
      }),
    );
    expectOutOfRange(() => dutyFromReading({ voltage: 0, current: 1, speed: 1 }, 1, k), "voltage");
    expectOutOfRange(() => dutyFromReading({ voltage: 1, current: -1, speed: 1 }, 1, k), "current");
    expectOutOfRange(() => dutyFromReading({ voltage: 1, current: 1, speed: Number.NaN }, 1, k), "speed");
  });

  it("close Kirchhoff's loop at any duty and speed", () => {
    const duties = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(duties, fc.double({ min: 0, max: 5000, noNaN: true }), (duty, speed) => {
        const state = { ...supply, duty };
        const current = motorCurrent(state, windingResistance, k, speed);
        const atMotor = duty * packVoltage(state, current);
        const used = current * (windingResistance + state.driverResistance) + k * speed;
        expect(Math.abs(atMotor - used)).toBeLessThan(1e-12);
      }),
    );
  });

  it("keep the power that the driver takes from the pack equal to what it gives", () => {
    const current = motorCurrent(supply, windingResistance, k, 1000);
    const fromPack = packVoltage(supply, current) * (packCurrent(supply, current) - supply.auxCurrent);
    const given = current ** 2 * (windingResistance + supply.driverResistance) + k * 1000 * current;
    expect(fromPack).toBeCloseToRelative(given, 1e-12);
  });

  it("at no duty leave the other loads alone on the pack", () => {
    const off = { ...supply, duty: 0 };
    expect(motorCurrent(off, windingResistance, k, 0)).toBe(0);
    expect(packCurrent(off, 0)).toBe(0.4);
    expect(packVoltage(off, 0)).toBeCloseToRelative(7.6 - 0.06 * 0.4, 1e-14);
  });

  it("refuse a duty beyond 0…1 and a circuit without resistance", () => {
    expectOutOfRange(() => motorCurrent({ ...supply, duty: 1.01 }, 0.3, k, 0), "supply.duty");
    expectOutOfRange(() => motorCurrent({ ...supply, duty: Number.NaN }, 0.3, k, 0), "supply.duty");
    const bare = { ...supply, packResistance: 0, driverResistance: 0 };
    expectOutOfRange(() => motorCurrent(bare, 0, k, 0), "resistance of the circuit");
  });
});

describe("open-circuit voltage", () => {
  it("goes through the curve's points and never falls between them", () => {
    for (const [charge, voltage] of curve) expect(openCircuitVoltage(curve, charge)).toBeCloseTo(voltage, 14);
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(unit, unit, (a, b) => {
        const low = openCircuitVoltage(curve, Math.min(a, b));
        expect(openCircuitVoltage(curve, Math.max(a, b))).toBeGreaterThanOrEqual(low - 1e-14);
      }),
    );
  });

  it("kept ready gives the same", () => {
    expect(openCircuitCurve(curve)(0.37)).toBe(openCircuitVoltage(curve, 0.37));
  });

  it("refuses a charge outside the curve", () => {
    const short = openCircuitCurve(curve.slice(1));
    expectOutOfRange(() => short(0.05), "charge");
    expectOutOfRange(() => short(1.01), "charge");
    expectOutOfRange(() => short(Number.NaN), "charge");
  });

  it("refuses points beyond 0…1, of no voltage, out of order, or too few", () => {
    expectOutOfRange(() => openCircuitCurve([...curve, [1.1, 4.3]]), "cell.curve.charge");
    expectOutOfRange(
      () =>
        openCircuitCurve([
          [0, 0],
          [1, 4],
        ]),
      "cell.curve.voltage",
    );
    expectOutOfRange(
      () =>
        openCircuitCurve([
          [1, 4],
          [0, 3],
        ]),
      "xs[1]",
    );
    expect(() => openCircuitCurve([[0, 3]])).toThrow(NotEnoughDataError);
  });
});
