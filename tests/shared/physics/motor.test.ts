import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  commandFromDuty,
  dutyFromCommand,
  frictionFromNoLoad,
  shaftTorque,
  speedConstant,
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

  it("from a no-load current alone leaves none at that current", () => {
    const frictionTorque = frictionFromNoLoad(7800, 0.4);
    expect(shaftTorque({ kv: 7800, frictionTorque, viscousTorque: 0 }, 0.4, 1234)).toBe(0);
    expectOutOfRange(() => frictionFromNoLoad(7800, -1), "noLoadCurrent");
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
    expect(dutyFromCommand(command, offset)).toBeCloseTo(expected, 15);
  });

  it("and command are each other's inverse above the offset", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, fc.double({ min: 0, max: 0.9, noNaN: true }), (duty, offset) => {
        expect(Math.abs(dutyFromCommand(commandFromDuty(duty, offset), offset) - duty)).toBeLessThan(1e-14);
      }),
    );
    expect(commandFromDuty(0, 0.2)).toBe(0.2);
    expect(commandFromDuty(0.5, 0.2)).toBeCloseTo(0.6, 15);
  });

  it("beyond 0…1 is refused", () => {
    expectOutOfRange(() => dutyFromCommand(1.1, 0), "command");
    expectOutOfRange(() => dutyFromCommand(Number.NaN, 0), "command");
    expectOutOfRange(() => dutyFromCommand(0.5, 1), "offset");
    expectOutOfRange(() => dutyFromCommand(0.5, -0.1), "offset");
    expectOutOfRange(() => commandFromDuty(1.1, 0), "duty");
    expectOutOfRange(() => commandFromDuty(0.5, 1), "offset");
  });
});
