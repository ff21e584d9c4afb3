import fc from "fast-check";
import type { Vehicle } from "#shared/physics/hold/vehicle.ts";

/** Invented glasshouse crawler. */
export const crawler: Vehicle = {
  mass: 0.18,
  wheelFriction: 0.7,
  skirtFriction: 0.3,
  skirtShare: 0.2,
  rollingResistance: 0.02,
  driven: "both",
  wheelbase: 0.11,
  track: 0.09,
  cgHeight: 0.02,
  cgFromRear: 0.05,
  suctionFromRear: 0.06,
  jolt: 0,
};

/** A billion even steps from one number to another: no lengths of 1e-320 m, whose last digits are gone before any physics begins. */
export function within(least: number, most: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 1e9 }).map((step) => least + ((most - least) * step) / 1e9);
}

/** Vehicles that can be, odd ones among them: suction outside the axles, skirts that carry all. */
export const vehicles: fc.Arbitrary<Vehicle> = fc.record({
  mass: within(0.02, 3),
  wheelFriction: within(0.05, 2),
  skirtFriction: within(0, 1),
  skirtShare: fc.oneof(fc.constant(0), within(0, 1)),
  rollingResistance: within(0, 0.2),
  driven: fc.constantFrom("both" as const, "front" as const, "rear" as const),
  wheelbase: within(0.05, 0.4),
  track: within(0.05, 0.4),
  cgHeight: within(0, 0.1),
  cgFromRear: within(0, 0.3),
  suctionFromRear: within(-0.02, 0.3),
  jolt: within(0, 1),
});

/** The same with the pull between the axles, where more suction never hurts a parked vehicle. */
export const pulledInside: fc.Arbitrary<Vehicle> = fc
  .tuple(vehicles, within(0.01, 0.99))
  .map(([vehicle, share]) => ({ ...vehicle, suctionFromRear: share * vehicle.wheelbase }));
