import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { worstAngle } from "#shared/physics/hold/worst.ts";
import { holdAt } from "#tests/support/holdAt.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { crawler, vehicles, within } from "./fleet.ts";

const suctions = within(0.1, 60);

describe("worstAngle", () => {
  it("has the least margin of all attitudes, by a scan in steps of 1°", () => {
    fc.assert(
      fc.property(vehicles, suctions, (vehicle, suction) => {
        const worst = worstAngle(vehicle, suction);
        let [parked, driving] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
        for (let angle = 0; angle <= 180; angle += 1) {
          const hold = holdAt(vehicle, suction, angle);
          parked = Math.min(parked, hold.parked.margin ?? Number.POSITIVE_INFINITY);
          driving = Math.min(driving, hold.driving.margin ?? Number.POSITIVE_INFINITY);
        }
        expect(worst.parked.margin ?? Number.NaN).toBeLessThanOrEqual(parked * (1 + 1e-12));
        expect(worst.driving.margin ?? Number.NaN).toBeLessThanOrEqual(driving * (1 + 1e-12));
      }),
    );
  });

  it("is an attitude whose margin and modes holdAt repeats", () => {
    fc.assert(
      fc.property(vehicles, suctions, (vehicle, suction) => {
        const { parked, driving } = worstAngle(vehicle, suction);
        expect({ angle: parked.angle, ...holdAt(vehicle, suction, parked.angle).parked }).toEqual(parked);
        expect({ angle: driving.angle, ...holdAt(vehicle, suction, driving.angle).driving }).toEqual(driving);
      }),
    );
  });

  it("of driving is no better than that of parking", () => {
    fc.assert(
      fc.property(vehicles, suctions, (vehicle, suction) => {
        const { parked, driving } = worstAngle(vehicle, suction);
        expect(driving.margin ?? Number.NaN).toBeLessThanOrEqual((parked.margin ?? Number.NaN) * (1 + 1e-12));
      }),
    );
  });

  it("of a vehicle that can't climb is the steepest of its grip, with a margin of 0", () => {
    const dragging = { ...crawler, skirtShare: 0.9, skirtFriction: 0.9 };
    const { driving } = worstAngle(dragging, 5);
    expect(driving).toMatchObject({ margin: 0, governs: ["climb"] });
    expect(driving.angle).toBeGreaterThan(0);
    expect(driving.angle).toBeLessThan(90);
  });

  it("of a vehicle that a strong pull both tips and stops is the attitude with the larger shortfall", () => {
    const outside = { ...crawler, suctionFromRear: -0.05 };
    const both = { ...outside, wheelFriction: 0.1, skirtShare: 0.9, skirtFriction: 0.1 };
    const { parked, driving } = worstAngle(both, 100);
    expect(driving).toMatchObject({ margin: 0, angle: parked.angle, governs: ["tip", "climb"] });
    expect(worstAngle(both, 0.1).driving.angle).not.toBe(parked.angle);
    const dragging = { ...crawler, skirtShare: 0.9, skirtFriction: 0.9 };
    const slightly = { ...dragging, suctionFromRear: -0.005 };
    expect(worstAngle(slightly, 100).driving.angle).toBe(worstAngle(dragging, 100).driving.angle);
  });

  it("without suction is still the attitude that needs most", () => {
    const { parked } = worstAngle(crawler, 0);
    expect(parked.margin).toBe(0);
    expect(parked.angle).toBe(worstAngle(crawler, 5).parked.angle);
  });

  it("refuses suctions below 0", () => {
    expectOutOfRange(() => worstAngle(crawler, -1), "suction");
  });
});
