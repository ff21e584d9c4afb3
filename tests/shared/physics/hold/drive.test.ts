import { describe, expect, it } from "vitest";
import { driveLoad, driveTorque } from "#shared/physics/hold/drive.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { crawler } from "./fleet.ts";

const drive = { wheelRadius: 0.015, motors: 2, gearRatio: 100, gearEfficiency: 0.6 };
const weight = 0.18 * 9.80665;

describe("drive torque", () => {
  // Power in is power out: motors·M·ω_motor·η = force·v, ω_motor = i·v/r_w.
  it("on a wall lifts the weight and drags the skirt", () => {
    const drag = (0.02 * 0.8 + 0.3 * 0.2) * 5;
    const torque = driveTorque(crawler, 5, 90, drive);
    expect(2 * torque * (100 / 0.015) * 0.6).toBeCloseToRelative(weight + drag, 1e-13);
  });

  it("on the floor without suction only rolls and drags", () => {
    const drag = (0.02 * 0.8 + 0.3 * 0.2) * weight;
    expect(driveTorque(crawler, 0, 0, drive)).toBeCloseToRelative((drag * 0.015) / (2 * 100 * 0.6), 1e-13);
  });

  it("of a vehicle that has left the ceiling is exactly none", () => {
    expect(driveTorque(crawler, 0, 180, drive)).toBe(0);
  });

  it.each([
    ["drive.wheelRadius", { wheelRadius: 0 }],
    ["drive.motors", { motors: 0 }],
    ["drive.gearRatio", { gearRatio: Number.NaN }],
    ["drive.gearEfficiency", { gearEfficiency: 0 }],
    ["drive.gearEfficiency", { gearEfficiency: 1.1 }],
  ])("refuses by %s what is %o", (quantity, change) => {
    expectOutOfRange(() => driveTorque(crawler, 5, 90, { ...drive, ...change }), quantity);
  });

  it("refuses a suction below 0 and a vehicle that can't be", () => {
    expectOutOfRange(() => driveTorque(crawler, -1, 90, drive), "suction");
    expectOutOfRange(() => driveTorque({ ...crawler, mass: 0 }, 5, 90, drive), "vehicle.mass");
  });
});

describe("load of a drive motor", () => {
  it("above half of its stall torque is flagged", () => {
    expect(driveLoad(0.5, 1)).toEqual({ share: 0.5, flagged: false });
    expect(driveLoad(0.51, 1)).toEqual({ share: 0.51, flagged: true });
  });

  it("refuses a torque below 0 and a motor that can't stall", () => {
    expectOutOfRange(() => driveLoad(-1, 1), "drive.torque");
    expectOutOfRange(() => driveLoad(1, 0), "drive.stallTorque");
  });
});
