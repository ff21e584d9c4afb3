import { describe, expect, it } from "vitest";
import { compileHold } from "#shared/physics/hold/law.ts";
import { checkVehicle, vehicleNotes, vehicleWeight } from "#shared/physics/hold/vehicle.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { crawler } from "./fleet.ts";

describe("weight of a vehicle", () => {
  it("with a jolt of half a g is one and a half times its own", () => {
    expect(vehicleWeight({ mass: 0.2, jolt: 0.5 })).toBeCloseToRelative(0.2 * 9.80665 * 1.5, 1e-14);
  });
});

describe("a vehicle that can't be", () => {
  it.each([
    ["vehicle.mass", { mass: 0 }],
    ["vehicle.mass", { mass: Number.NaN }],
    ["vehicle.wheelFriction", { wheelFriction: -0.1 }],
    ["vehicle.skirtFriction", { skirtFriction: -0.1 }],
    ["vehicle.skirtShare", { skirtShare: -0.1 }],
    ["vehicle.skirtShare", { skirtShare: 1.1 }],
    ["vehicle.rollingResistance", { rollingResistance: -0.1 }],
    ["vehicle.wheelbase", { wheelbase: 0 }],
    ["vehicle.track", { track: Number.POSITIVE_INFINITY }],
    ["vehicle.cgHeight", { cgHeight: -0.01 }],
    ["vehicle.cgFromRear", { cgFromRear: Number.NaN }],
    ["vehicle.suctionFromRear", { suctionFromRear: Number.NaN }],
    ["vehicle.jolt", { jolt: -0.5 }],
  ])("is refused by %s of %o", (quantity, change) => {
    expectOutOfRange(() => checkVehicle({ ...crawler, ...change }), quantity);
    expectOutOfRange(() => vehicleNotes({ ...crawler, ...change }), quantity);
    expectOutOfRange(() => compileHold({ ...crawler, ...change }), quantity);
  });
});

describe("vehicleNotes", () => {
  it("of a usual vehicle are none", () => {
    expect(vehicleNotes(crawler)).toEqual([]);
  });

  it.each([
    ["wheel-friction-high", { wheelFriction: 1.6 }],
    ["wheel-friction-low", { wheelFriction: 0.05 }],
    ["skirt-friction-high", { skirtFriction: 1.6 }],
    ["rolling-resistance-high", { rollingResistance: 0.4 }],
    ["wheels-unloaded", { skirtShare: 1 }],
    ["jolt-high", { jolt: 4 }],
    ["cg-outside-wheelbase", { cgFromRear: -0.01 }],
    ["cg-outside-wheelbase", { cgFromRear: 0.12 }],
    ["suction-outside-wheelbase", { suctionFromRear: 0 }],
    ["suction-outside-wheelbase", { suctionFromRear: 0.11 }],
    ["cg-high", { cgHeight: 0.1 }],
  ])("say %s of %o", (code, change) => {
    expect(vehicleNotes({ ...crawler, ...change }).map((note) => note.code)).toEqual([code]);
  });
});
