import { describe, expect, it } from "vitest";
import { gapAtLimit } from "#client/views/attitudes/attitudeWords.ts";
import { standAt } from "#client/views/attitudes/stand.ts";
import { holdUnder } from "#shared/physics/hold/holdUnder.ts";
import { compileHold } from "#shared/physics/hold/law.ts";
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
    expect(standAt(FLAT, rigidPull(10), 0).driving).toEqual({ pull: 0, margin: null, modes: [], gap: null });
  });

  it("names what needs most all the same, with no pull made at all, at a margin of 0", () => {
    expect(standAt(FLAT, rigidPull(0), 90).parked).toMatchObject({ margin: 0, modes: ["slide"] });
  });

  it("finds no pull that suffices, on a wall without friction, and says infinite", () => {
    const { parked } = standAt({ ...FLAT, wheelFriction: 0 }, rigidPull(10), 90);
    expect(parked).toMatchObject({ pull: Number.POSITIVE_INFINITY, margin: 0, modes: ["slide"] });
  });

  describe("with running gear that gives", () => {
    // F_s(h) = 12 N·(0.6 mm/h), set at 0.6 mm under 2 N, 10 N/mm.
    const gapUnder = (load: number) => Math.max(0, 6e-4 - (load - 2) / 10_000);
    const giving = { gapUnder, at: (gap: number) => Math.min(100, (12 * 6e-4) / gap) };
    const pull = { set: 12, giving };

    it("gives the gap under the load at which the mode of least margin lets go, from N = F_required + W cos θ", () => {
      const { parked } = standAt(FLAT, pull, 180);
      const weight = parked.pull;
      expect(parked.gap).toBeCloseToRelative(gapUnder(weight - weight), 1e-12);
      expect(parked.margin).toBeCloseToRelative(giving.at(gapUnder(0)) / weight, 1e-12);
    });

    it("where it gives until the skirt is down: a gap of 0", () => {
      const soft = { set: 12, giving: { gapUnder: () => 0, at: () => 30 } };
      expect(standAt(FLAT, soft, 90).parked.gap).toBe(0);
      expect(gapAtLimit(0)).toBe("the skirt touches there");
    });

    it("names what has least margin at its own gap, though another mode needs more pull", () => {
      const { parked } = standAt(FLAT, pull, 170);
      const hold = holdUnder(compileHold(FLAT), pull, 170);
      expect(parked.modes).toEqual(hold.parked.governs);
    });

    it("rigid: no gap to say", () => {
      expect(standAt(FLAT, rigidPull(12), 180).parked.gap).toBeNull();
    });
  });
});
