import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bestEfficiencyCurrent,
  frictionFromNoLoad,
  motorEfficiency,
  noLoadSpeed,
  rotorDutyFromCommand,
  shaftTorque,
  speedConstant,
  stallTorque,
  torqueConstant,
} from "#shared/physics/motor.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const motor = { kv: 7800, resistance: 0.35, frictionTorque: 2e-4, viscousTorque: 1e-8 };

describe("torque constant", () => {
  // 1 V at rest of losses turns a motor of K_v rpm/V at K_v rpm: k_e = 1 V/(K_v·2π/60).
  it("of 7800 rpm/V is 60/(2π·7800)", () => {
    expect(torqueConstant(7800)).toBeCloseToRelative(60 / (2 * Math.PI * 7800), 1e-14);
  });

  it("and speed constant are each other's inverse", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e5, noNaN: true }), (kv) => {
        expect(speedConstant(torqueConstant(kv))).toBeCloseToRelative(kv, 1e-14);
      }),
    );
  });

  it.each([0, -1, Number.NaN])("of %s is refused", (value) => {
    expectOutOfRange(() => torqueConstant(value), "motor.kv");
    expectOutOfRange(() => speedConstant(value), "torqueConstant");
  });
});

describe("shaft torque", () => {
  const k = 60 / (2 * Math.PI * 7800);

  it("is the current's torque less both frictions", () => {
    expect(shaftTorque(motor, 3, 2000)).toBeCloseToRelative(k * 3 - 2e-4 - 1e-8 * 2000, 1e-13);
    expect(shaftTorque(motor, 0, 0)).toBe(-2e-4);
  });

  it("at the no-load speed's own current is none", () => {
    const speed = noLoadSpeed(motor, 4);
    const current = (4 - k * speed) / motor.resistance;
    expect(Math.abs(shaftTorque(motor, current, speed))).toBeLessThan(1e-15);
  });

  it("from a no-load current alone leaves none at that current", () => {
    const frictionTorque = frictionFromNoLoad(7800, 0.4);
    expect(shaftTorque({ kv: 7800, frictionTorque, viscousTorque: 0 }, 0.4, 1234)).toBe(0);
    expectOutOfRange(() => frictionFromNoLoad(7800, -1), "noLoadCurrent");
  });
});

describe("a motor held still", () => {
  it("has k_t V/R less its friction, and none where friction is stronger", () => {
    const k = 60 / (2 * Math.PI * 7800);
    expect(stallTorque(motor, 3.7)).toBeCloseToRelative((k * 3.7) / 0.35 - 2e-4, 1e-13);
    expect(stallTorque(motor, 0)).toBe(0);
    expect(noLoadSpeed(motor, 0.01)).toBe(0);
  });

  it("refuses a winding without resistance, a voltage below 0 or of no number", () => {
    expectOutOfRange(() => stallTorque({ ...motor, resistance: 0 }, 3), "motor.resistance");
    expectOutOfRange(() => stallTorque(motor, -3), "voltage");
    expectOutOfRange(() => noLoadSpeed(motor, Number.NaN), "voltage");
  });
});

describe("best efficiency", () => {
  it("is nowhere exceeded between no load and stall", () => {
    const best = motorEfficiency(7.4, 1.2, 0.3, bestEfficiencyCurrent(7.4, 1.2, 0.3));
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 7.4 / 1.2, noNaN: true }), (current) => {
        expect(motorEfficiency(7.4, 1.2, 0.3, current)).toBeLessThanOrEqual(best * (1 + 1e-12));
      }),
    );
  });

  it("at no load and at stall is none", () => {
    expect(motorEfficiency(6, 1.5, 0.3, 0.3)).toBe(0);
    expect(motorEfficiency(6, 1.5, 0.3, 4)).toBe(0);
  });

  it("refuses currents and motors that can't be", () => {
    expectOutOfRange(() => motorEfficiency(6, 1.5, 0.3, 0.2), "current");
    expectOutOfRange(() => motorEfficiency(6, 1.5, 0.3, 4.1), "current");
    expectOutOfRange(() => motorEfficiency(6, 1.5, 0, 0), "current");
    expectOutOfRange(() => bestEfficiencyCurrent(6, 1.5, 4), "noLoadCurrent");
    expectOutOfRange(() => bestEfficiencyCurrent(6, 1.5, 0), "noLoadCurrent");
    expectOutOfRange(() => bestEfficiencyCurrent(0, 1.5, 0.3), "voltage");
    expectOutOfRange(() => bestEfficiencyCurrent(6, 0, 0.3), "resistance");
  });
});

describe("duty of a throttle command", () => {
  it.each([
    [0, 0, 0],
    [0.5, 0, 0.5],
    [1, 0, 1],
    [0.2, 0.2, 0],
    [0.1, 0.2, 0],
    [0.6, 0.2, 0.5],
    [1, 0.2, 1],
  ])("at %s with an offset of %s is %s", (command, offset, expected) => {
    expect(rotorDutyFromCommand(command, offset)).toBeCloseTo(expected, 15);
  });

  it("without an offset is the command", () => {
    expect(rotorDutyFromCommand(0.37)).toBe(0.37);
  });

  it("beyond 0…1 is refused", () => {
    expectOutOfRange(() => rotorDutyFromCommand(1.1), "command");
    expectOutOfRange(() => rotorDutyFromCommand(Number.NaN), "command");
    expectOutOfRange(() => rotorDutyFromCommand(0.5, 1), "offset");
    expectOutOfRange(() => rotorDutyFromCommand(0.5, -0.1), "offset");
  });
});
