import { describe, expect, it } from "vitest";
import { leastFriction, leastFrictionAnywhere } from "#shared/physics/hold/leastFriction.ts";
import { worstAngle } from "#shared/physics/hold/worst.ts";
import { holdAt } from "#tests/support/holdAt.ts";

const G = 9.80665;
/** An invented crawler, low and long, of 1/9.80665 kg: its weight is 1 N. */
const UNIT = {
  mass: 1 / G,
  skirtFriction: 0.3,
  skirtShare: 0,
  rollingResistance: 0,
  driven: "both",
  wheelbase: 0.2,
  track: 0.2,
  cgHeight: 0.005,
  cgFromRear: 0.1,
  suctionFromRear: 0.1,
  jolt: 0,
} as const;
const DRAGGING = { ...UNIT, skirtShare: 0.4, rollingResistance: 0.05, driven: "front" } as const;

describe("the least friction that holds", () => {
  it("on the wall without a skirt's share: is weight over pull, and the margin wanted times as much", () => {
    // μ·F = W: the law of dry friction, by hand
    expect(leastFriction(UNIT, 2.5, 90).parked).toBeCloseToRelative(0.4, 1e-12);
    expect(leastFriction(UNIT, 2.5, 90, 1.5).parked).toBeCloseToRelative(0.6, 1e-12);
  });

  it("with a skirt that carries its share: counts the skirt's own friction first", () => {
    // (1 − 0.4)·μ + 0.4·0.3 = 0.4, by hand
    const { parked } = leastFriction({ ...UNIT, skirtShare: 0.4 }, 2.5, 90);
    expect(parked).toBeCloseToRelative((0.4 - 0.12) / 0.6, 1e-12);
  });

  it("below what friction holds on a slope by itself: is none on the floor, tan θ without pull", () => {
    expect(leastFriction(UNIT, 0, 0).parked).toBe(0);
    expect(leastFriction(UNIT, 0, 30).parked).toBeCloseToRelative(Math.tan(Math.PI / 6), 1e-12);
  });

  it("on a ceiling with less pull than weight: is none that does it", () => {
    expect(leastFriction(UNIT, 0.9, 180)).toEqual({ parked: null, driving: null });
    expect(leastFriction(UNIT, 1.2, 180, 1.5)).toEqual({ parked: null, driving: null });
  });

  it("put into the verdict: brings slide and climb to the margin exactly, a little less stays below", () => {
    for (const vehicle of [UNIT, DRAGGING])
      for (const angle of [60, 90, 120, 153])
        for (const margin of [1, 1.5]) {
          const { parked, driving } = leastFriction(vehicle, 3.1, angle, margin);
          if (parked === null || driving === null) throw new Error("holds with no friction");
          const at = (wheelFriction: number) => holdAt({ ...vehicle, wheelFriction }, 3.1, angle).margins;
          expect(at(parked).slide).toBeCloseToRelative(margin, 1e-9);
          expect(at(driving).climb).toBeCloseToRelative(margin, 1e-9);
          expect(at(driving * 0.99).climb).toBeLessThan(margin);
        }
  });

  it("from floor to ceiling: is 1/√((F/mW)² − 1), the friction cone's closed form", () => {
    // docs/method/holding.md, Modes: worst at θ = 180° − arctan(1/μ), factor √(1 + 1/μ²)
    expect(leastFrictionAnywhere(UNIT, 3).parked).toBeCloseToRelative(1 / Math.sqrt(8), 1e-9);
    expect(leastFrictionAnywhere(UNIT, 3, 1.5).parked).toBeCloseToRelative(1 / Math.sqrt(3), 1e-9);
    expect(leastFrictionAnywhere(UNIT, 0.99)).toEqual({ parked: null, driving: null });
  });

  it("from floor to ceiling, driving with drag: brings the worst attitude to the margin", () => {
    const { driving } = leastFrictionAnywhere(DRAGGING, 4, 1.2);
    const worst = worstAngle({ ...DRAGGING, wheelFriction: driving ?? 0 }, 4);
    expect(worst.driving.margin).toBeCloseToRelative(1.2, 1e-9);
  });
});
