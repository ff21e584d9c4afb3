import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cosineOfDegrees, sineOfDegrees } from "#shared/physics/hold/angle.ts";
import { requiredSuction } from "#shared/physics/hold/holdAt.ts";
import { leastMarginUnder } from "#shared/physics/hold/holdUnder.ts";
import { CONDITION_COUNT, CONDITIONS, compileHold } from "#shared/physics/hold/law.ts";
import { rigidPull } from "#shared/physics/hold/pull.ts";
import type { Vehicle } from "#shared/physics/hold/vehicle.ts";
import { holdAt } from "#tests/support/holdAt.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";
import { crawler, pulledInside, vehicles, within } from "./fleet.ts";

const suctions = within(0, 60);
const angles = within(0, 180);

/** The conditions as a force balance states them, slack ≥ 0 where met: written out once more, axle by axle. */
function slacks(vehicle: Vehicle, suction: number, angle: number) {
  const theta = (angle * Math.PI) / 180;
  const weight = vehicle.mass * 9.80665 * (1 + vehicle.jolt);
  const across = weight * Math.cos(theta);
  const along = weight * Math.sin(theta);
  const normal = suction + across;
  const { skirtShare, wheelFriction, skirtFriction, rollingResistance, wheelbase, track, cgHeight } = vehicle;
  const axles = (length: number, cg: number, pull: number) => {
    const up = (suction * pull + across * cg - along * cgHeight) / length;
    return [up, normal - up] as const;
  };
  const [front, rear] = axles(wheelbase, vehicle.cgFromRear, vehicle.suctionFromRear);
  const down = axles(wheelbase, wheelbase - vehicle.cgFromRear, wheelbase - vehicle.suctionFromRear);
  const sideways = axles(track, track / 2, track / 2);
  const wheels = (1 - skirtShare) * normal;
  const skirt = skirtShare * normal;
  const driven = { both: normal, front, rear }[vehicle.driven] * (1 - skirtShare);
  return {
    liftOff: normal,
    slide: wheelFriction * wheels + skirtFriction * skirt - along,
    tip: Math.min(front, rear, ...down, ...sideways),
    climb: wheelFriction * driven - along - rollingResistance * wheels - skirtFriction * skirt,
  };
}

const modes = ["liftOff", "slide", "tip", "climb"] as const;

describe("holdAt against the balance of forces", () => {
  it("has a margin of 1 or more, or none needed, exactly where the condition is met", () => {
    fc.assert(
      fc.property(vehicles, suctions, angles, (vehicle, suction, angle) => {
        const { margins } = holdAt(vehicle, suction, angle);
        const slack = slacks(vehicle, suction, angle);
        for (const mode of modes) {
          const scale = vehicle.mass * 9.80665 + suction;
          if (Math.abs(slack[mode]) < 1e-9 * scale) continue;
          expect((margins[mode] ?? Number.POSITIVE_INFINITY) >= 1).toBe(slack[mode] > 0);
        }
      }),
      { numRuns: 3000 },
    );
  });

  it("at exactly the suction it requires leaves no slack", () => {
    fc.assert(
      fc.property(pulledInside, angles, (vehicle, angle) => {
        const { required } = holdAt(vehicle, 1, angle);
        for (const mode of modes) {
          const needed = required[mode];
          if (!(needed > 0 && needed < 1e6)) continue;
          const slack = slacks(vehicle, needed, angle)[mode];
          expect(Math.abs(slack)).toBeLessThan(1e-9 * (vehicle.mass * 9.80665 + needed));
        }
      }),
      { numRuns: 1000 },
    );
  });

  it("has margins in proportion to the suction, while that only helps", () => {
    const { margins } = holdAt(crawler, 2, 120);
    const double = holdAt(crawler, 4, 120).margins;
    for (const mode of modes) expect(double[mode]).toBeCloseTo(2 * (margins[mode] ?? Number.NaN), 12);
  });

  it("has the same margins for mass and suction times the same number", () => {
    fc.assert(
      fc.property(vehicles, suctions, angles, (vehicle, suction, angle) => {
        const once = holdAt(vehicle, suction, angle);
        const twice = holdAt({ ...vehicle, mass: vehicle.mass * 2 }, suction * 2, angle);
        expect(twice.margins).toEqual(once.margins);
      }),
    );
  });

  it("has the same margins for all lengths times the same number", () => {
    const { wheelbase, track, cgHeight, cgFromRear, suctionFromRear } = crawler;
    const large = {
      ...crawler,
      wheelbase: 2 * wheelbase,
      track: 2 * track,
      cgHeight: 2 * cgHeight,
      cgFromRear: 2 * cgFromRear,
      suctionFromRear: 2 * suctionFromRear,
    };
    expect(holdAt(large, 3, 133).margins).toEqual(holdAt(crawler, 3, 133).margins);
  });
});

describe("holdAt on floor, wall and ceiling", () => {
  it("on the floor needs no suction at all", () => {
    const { required, margins, parked, driving } = holdAt(crawler, 0, 0);
    expect(required).toEqual({ liftOff: 0, slide: 0, tip: 0, climb: 0 });
    expect(margins).toEqual({ liftOff: null, slide: null, tip: null, climb: null });
    expect(parked).toEqual({ margin: null, governs: [] });
    expect(driving).toEqual({ margin: null, governs: [] });
  });

  it("on the wall does not lift off, and slides first", () => {
    const { margins, parked } = holdAt(crawler, 5, 90);
    expect(margins.liftOff).toBeNull();
    const weight = 0.18 * 9.80665;
    expect(margins.slide).toBeCloseTo(5 / (weight / (0.7 * 0.8 + 0.3 * 0.2)), 12);
    expect(parked.governs).toEqual(["slide"]);
  });

  it("on the ceiling ties lift-off and slide, whatever the friction", () => {
    fc.assert(
      fc.property(vehicles, (vehicle) => {
        const centred = {
          ...vehicle,
          cgFromRear: vehicle.wheelbase / 2,
          suctionFromRear: vehicle.wheelbase / 2,
        };
        const { required, parked } = holdAt(centred, 5, 180);
        const weight = centred.mass * 9.80665 * (1 + centred.jolt);
        expect(required.liftOff).toBeCloseToRelative(weight, 1e-14);
        expect(parked.governs).toEqual(["liftOff", "slide", "tip"]);
      }),
    );
  });

  it("on the ceiling with its weight off the suction's line tips first", () => {
    const { parked, margins } = holdAt(crawler, 5, 180);
    expect(parked.governs).toEqual(["tip"]);
    expect(margins.liftOff).toBeCloseTo(margins.slide ?? Number.NaN, 14);
  });
});

describe("holdAt at its edges", () => {
  it("with wheels that drag more than they grip can't climb at any suction", () => {
    const dragging = { ...crawler, skirtShare: 0.9, skirtFriction: 0.9 };
    const { margins, required, driving } = holdAt(dragging, 100, 90);
    expect(margins.climb).toBe(0);
    expect(required.climb).toBe(Number.POSITIVE_INFINITY);
    expect(driving).toEqual({ margin: 0, governs: ["climb"] });
  });

  it("with a pull outside its axles holds on the floor while the pull is small", () => {
    const outside = { ...crawler, suctionFromRear: -0.02 };
    expect(holdAt(outside, 1, 0).margins.tip).toBeNull();
    expect(holdAt(outside, 10, 0).margins.tip).toBe(0);
  });

  it("with no suction on a wall has margins of exactly 0", () => {
    expect(holdAt(crawler, 0, 90).parked).toEqual({ margin: 0, governs: ["slide", "tip"] });
  });

  it("drives on the axle that is loaded: rear wheels climb a wall better than front ones", () => {
    const climb = (driven: Vehicle["driven"]) =>
      holdAt({ ...crawler, suctionFromRear: 0.055, driven }, 8, 90).margins.climb ?? Number.NaN;
    expect(climb("rear")).toBeGreaterThan(climb("front"));
    expect(climb("both")).toBeGreaterThan(climb("rear"));
  });

  it("refuses suctions below 0 and attitudes beyond floor and ceiling", () => {
    expectOutOfRange(() => holdAt(crawler, -1, 90), "suction");
    expectOutOfRange(() => holdAt(crawler, Number.NaN, 90), "suction");
    expectOutOfRange(() => holdAt(crawler, 1, -0.1), "angle");
    expectOutOfRange(() => holdAt(crawler, 1, 180.1), "angle");
    expectOutOfRange(() => requiredSuction(crawler, Number.NaN), "angle");
  });
});

describe("requiredSuction", () => {
  it("is the least that meets every condition, and a little less does not", () => {
    fc.assert(
      fc.property(vehicles, angles, (vehicle, angle) => {
        const needed = requiredSuction(vehicle, angle);
        for (const [suction, state] of [
          [needed.parked, "parked"],
          [needed.driving, "driving"],
        ] as const) {
          if (!(suction > 1e-6 && suction < 1e6)) continue;
          expect(holdAt(vehicle, suction * (1 + 1e-9), angle)[state].margin ?? 2).toBeGreaterThanOrEqual(1);
          expect(holdAt(vehicle, suction * (1 - 1e-6), angle)[state].margin ?? 2).toBeLessThan(1);
        }
      }),
    );
  });

  it("on the floor is exactly none, on the wall for wheels that can't climb infinite", () => {
    expect(requiredSuction(crawler, 0)).toEqual({ parked: 0, driving: 0 });
    const dragging = { ...crawler, skirtShare: 0.9, skirtFriction: 0.9 };
    expect(requiredSuction(dragging, 90).driving).toBe(Number.POSITIVE_INFINITY);
    expect(requiredSuction(dragging, 90).parked).toBeLessThan(10);
  });

  it("is infinite where one condition allows less than another needs", () => {
    expect(requiredSuction({ ...crawler, suctionFromRear: -0.02 }, 90).parked).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("the loops' margins", () => {
  it("are those of holdAt, with infinite for null", () => {
    const law = compileHold(crawler);
    fc.assert(
      fc.property(vehicles, suctions, angles, (vehicle, suction, angle) => {
        compileHold(vehicle, law);
        const [sine, cosine] = [sineOfDegrees(angle), cosineOfDegrees(angle)];
        const hold = holdAt(vehicle, suction, angle);
        const none = Number.POSITIVE_INFINITY;
        expect(leastMarginUnder(law, CONDITIONS.tip[1], rigidPull(suction), sine, cosine)).toBe(
          hold.parked.margin ?? none,
        );
        expect(leastMarginUnder(law, CONDITION_COUNT, rigidPull(suction), sine, cosine)).toBe(
          hold.driving.margin ?? none,
        );
      }),
    );
  });
});
