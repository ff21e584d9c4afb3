import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findRoot } from "#shared/numeric/root.ts";
import { holdOf } from "#shared/physics/hold/holdAt.ts";
import { holdUnder, worstUnder } from "#shared/physics/hold/holdUnder.ts";
import { compileHold } from "#shared/physics/hold/law.ts";
import { gapUnder, pullOf, rideHeightOf, rigidPull } from "#shared/physics/hold/pull.ts";
import { worstOf } from "#shared/physics/hold/worst.ts";
import { expectOutOfRange } from "#tests/support/outOfRange.ts";

const G = 9.80665;
const vehicle = {
  mass: 0.3,
  wheelFriction: 0.7,
  skirtFriction: 0.3,
  skirtShare: 0,
  rollingResistance: 0,
  driven: "both",
  wheelbase: 0.14,
  track: 0.1,
  cgHeight: 0.02,
  cgFromRear: 0.07,
  suctionFromRear: 0.07,
  jolt: 0,
} as const;
const W = 0.3 * G;

/** A pull that falls as the gap opens, as a leak makes it: F = F₀/(1 + (h/h₀)²). */
const falling =
  (most: number, half: number) =>
  (gap: number): number =>
    most / (1 + (gap / half) ** 2);

function giving(
  stiffness: number,
  gap: number,
  made: (gap: number) => number,
  gapLoad: number | null = null,
) {
  const rideHeight = rideHeightOf({ ...vehicle, verticalStiffness: stiffness, gapLoad }, gap);
  return pullOf(made(gap), rideHeight, made);
}

describe("the ride height", () => {
  it("is that of the set gap at the load it was set with, and opens by 1/k a newton less", () => {
    const ride = { gap: 6e-4, load: 2.5, stiffness: 8000 };
    expect(gapUnder(ride, 2.5)).toBe(6e-4);
    expect(gapUnder(ride, 0.5)).toBeCloseToRelative(6e-4 + 2 / 8000, 1e-14);
    expect(gapUnder(ride, 2.5 + 4.8)).toBeCloseTo(0, 18);
    expect(gapUnder(ride, 50)).toBe(0);
  });

  it("is set under the vehicle's own weight unless said otherwise, and none where it is rigid", () => {
    expect(rideHeightOf({ mass: 0.3, verticalStiffness: 9000 }, 5e-4)?.load).toBeCloseToRelative(W, 1e-14);
    expect(rideHeightOf({ mass: 0.3, verticalStiffness: 9000, gapLoad: 0 }, 5e-4)?.load).toBe(0);
    expect(rideHeightOf({ mass: 0.3 }, 5e-4)).toBeNull();
    expect(rideHeightOf({ mass: 0.3, verticalStiffness: null, gapLoad: 2 }, 5e-4)).toBeNull();
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("refuses a stiffness of %s by name", (value) => {
    expectOutOfRange(
      () => rideHeightOf({ mass: 0.3, verticalStiffness: value }, 5e-4),
      "vehicle.verticalStiffness",
    );
  });

  it("refuses a load below 0 by name", () => {
    expectOutOfRange(() => rideHeightOf({ mass: 0.3, gapLoad: -0.1 }, 5e-4), "vehicle.gapLoad");
  });
});

describe("holdUnder, by hand", () => {
  // Ceiling: lift-off at N = 0, so the gap has opened by N₀/k; wall: sliding at N = W/μ.
  it("judges lift-off at the unloaded gap and sliding at the loaded one", () => {
    const made = falling(9, 8e-4);
    const pull = giving(9000, 5e-4, made);
    const ceiling = holdUnder(compileHold(vehicle), pull, 180);
    expect(ceiling.gaps?.liftOff).toBeCloseToRelative(5e-4 + W / 9000, 1e-12);
    expect(ceiling.margins.liftOff).toBeCloseToRelative(made(5e-4 + W / 9000) / W, 1e-12);
    const wall = holdUnder(compileHold(vehicle), pull, 90);
    const loaded = 5e-4 - (W / 0.7 - W) / 9000;
    expect(wall.gaps?.slide).toBeCloseToRelative(loaded, 1e-12);
    expect(wall.margins.slide).toBeCloseToRelative((made(loaded) * 0.7) / W, 1e-12);
    expect(wall.margins.liftOff).toBeNull();
    expect(wall.gaps?.liftOff).toBeNull();
  });

  it("stops at the surface, where the skirt touches", () => {
    const made = falling(9, 8e-4);
    const wall = holdUnder(compileHold(vehicle), giving(500, 5e-4, made), 90);
    expect(wall.gaps?.slide).toBe(0);
    expect(wall.margins.slide).toBeCloseToRelative((9 * 0.7) / W, 1e-12);
  });

  it("of a rigid vehicle is the hold of its one pull, gaps unsaid", () => {
    const law = compileHold(vehicle);
    expect(holdUnder(law, rigidPull(5), 120)).toEqual(holdOf(law, 5, 120));
  });
});

describe("holdUnder, against the equilibrium under load", () => {
  // On a wall the vehicle stands where N = F(h(N)); it slides unless μN ≥ W. The spring is stiff enough for one such N.
  it("holds on a wall exactly where friction at the settled gap carries the weight", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 9, noNaN: true }),
        fc.double({ min: 8000, max: 60_000, noNaN: true }),
        fc.double({ min: 2e-4, max: 9e-4, noNaN: true }),
        fc.double({ min: 0.3, max: 1.2, noNaN: true }),
        (most, stiffness, gap, wheelFriction) => {
          const made = falling(most, 8e-4);
          const ride = { gap, load: W, stiffness };
          const settled = findRoot((load) => load - made(gapUnder(ride, load)), 0, 2 * most).root;
          const holds = wheelFriction * settled >= W;
          const law = compileHold({ ...vehicle, wheelFriction });
          const margin = holdUnder(law, pullOf(made(gap), ride, made), 90).margins.slide ?? Number.NaN;
          if (Math.abs(margin - 1) > 1e-9) expect(margin >= 1).toBe(holds);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe("worstUnder", () => {
  const vehicles = fc.record({
    mass: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
    wheelFriction: fc.double({ min: 0.3, max: 1.2, noNaN: true }),
    rollingResistance: fc.double({ min: 0, max: 0.05, noNaN: true }),
    skirtShare: fc.double({ min: 0, max: 0.3, noNaN: true }),
    cgHeight: fc.double({ min: 0.005, max: 0.05, noNaN: true }),
    driven: fc.constantFrom("both" as const, "front" as const, "rear" as const),
  });

  it("is no better than any of a thousand attitudes, and has its own margin", () => {
    fc.assert(
      fc.property(
        vehicles,
        fc.double({ min: 3, max: 20, noNaN: true }),
        fc.double({ min: 3, max: 5, noNaN: true }),
        (change, most, logStiffness) => {
          const law = compileHold({ ...vehicle, ...change });
          const made = falling(most, 8e-4);
          const ride = { gap: 6e-4, load: change.mass * G, stiffness: 10 ** logStiffness };
          const pull = pullOf(made(6e-4), ride, made);
          const worst = worstUnder(law, pull);
          for (const state of ["parked", "driving"] as const) {
            const { angle, margin } = worst[state];
            expect(holdUnder(law, pull, angle)[state].margin).toBe(margin);
            for (let i = 0; i <= 1000; i++) {
              const other = holdUnder(law, pull, (180 * i) / 1000)[state].margin ?? Number.POSITIVE_INFINITY;
              if (other < (margin ?? Number.POSITIVE_INFINITY) * (1 - 1e-9))
                expect.fail(`${state}: ${other} at ${(180 * i) / 1000}°, ${margin} at ${angle}°`);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it("of a spring without end is the rigid one", () => {
    const law = compileHold(vehicle);
    const made = falling(7, 8e-4);
    const rigid = worstOf(law, made(6e-4));
    const stiff = worstUnder(law, giving(1e12, 6e-4, made));
    expect(stiff.parked.margin).toBeCloseToRelative(rigid.parked.margin ?? 0, 1e-9);
    expect(stiff.parked.angle).toBeCloseToRelative(rigid.parked.angle, 1e-4);
    expect(worstUnder(law, rigidPull(7))).toEqual(worstOf(law, 7));
  });

  it("where nothing pulls is that of a rigid vehicle without pull", () => {
    const law = compileHold(vehicle);
    expect(
      worstUnder(
        law,
        giving(9000, 6e-4, () => 0),
      ).driving.margin,
    ).toBe(0);
  });
});
