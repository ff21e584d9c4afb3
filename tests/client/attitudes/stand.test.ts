import { describe, expect, it } from "vitest";
import { standAt } from "#client/views/attitudes/stand.ts";
import { rigidPull } from "#shared/physics/hold/pull.ts";
import { FLAT, WEIGHT } from "./vehicle.ts";

// Expected values: statics of a block on an incline, written out by hand.
describe("standAt", () => {
  it("needs W/μ, on a wall with friction alone, and slide governs", () => {
    const { parked } = standAt(FLAT, rigidPull(10), 90);
    expect(parked.pull).toBeCloseToRelative(WEIGHT / 0.8, 1e-12);
    expect(parked.margin).toBeCloseToRelative((10 * 0.8) / WEIGHT, 1e-12);
    expect(parked.modes).toEqual(["slide"]);
  });

  it("needs the weight, on a ceiling, with every mode that ties named", () => {
    const { parked } = standAt(FLAT, rigidPull(10), 180);
    expect(parked.pull).toBeCloseToRelative(WEIGHT, 1e-12);
    expect(parked.modes).toEqual(["liftOff", "slide", "tip"]);
  });

  it("needs √(1 + 1/μ²) of the weight, at 180° − arctan(1/μ), and less on either side", () => {
    const worst = 180 - (Math.atan(1 / 0.8) * 180) / Math.PI;
    const need = standAt(FLAT, rigidPull(10), worst).parked.pull;
    expect(need).toBeCloseToRelative(WEIGHT * Math.sqrt(1 + 1 / 0.8 ** 2), 1e-12);
    expect(standAt(FLAT, rigidPull(10), worst - 1).parked.pull).toBeLessThan(need);
    expect(standAt(FLAT, rigidPull(10), worst + 1).parked.pull).toBeLessThan(need);
  });

  it("needs more to drive than to park, with rolling resistance, and climb governs", () => {
    const { parked, driving } = standAt({ ...FLAT, rollingResistance: 0.1 }, rigidPull(10), 90);
    expect(driving.pull).toBeCloseToRelative(WEIGHT / (0.8 - 0.1), 1e-12);
    expect(driving.pull).toBeGreaterThan(parked.pull);
    expect(driving.modes).toEqual(["climb"]);
  });

  it("needs nothing, on the floor, and names no mode", () => {
    expect(standAt(FLAT, rigidPull(10), 0).driving).toEqual({ pull: 0, margin: null, modes: [] });
  });

  it("names what needs most all the same, with no pull made at all, at a margin of 0", () => {
    expect(standAt(FLAT, rigidPull(0), 90).parked).toMatchObject({ margin: 0, modes: ["slide"] });
  });

  it("finds no pull that suffices, on a wall without friction, and says infinite", () => {
    const { parked } = standAt({ ...FLAT, wheelFriction: 0 }, rigidPull(10), 90);
    expect(parked).toMatchObject({ pull: Number.POSITIVE_INFINITY, margin: 0, modes: ["slide"] });
  });
});
