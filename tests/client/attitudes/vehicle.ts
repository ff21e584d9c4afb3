import type { Vehicle } from "#shared/physics/hold/vehicle.ts";

/** A crawler that can only slide, lift off or fail to climb: no height, weight and pull in its middle. Invented. */
export const FLAT: Vehicle = {
  mass: 0.4,
  wheelFriction: 0.8,
  skirtFriction: 0,
  skirtShare: 0,
  rollingResistance: 0,
  driven: "both",
  wheelbase: 0.1,
  track: 0.1,
  cgHeight: 0,
  cgFromRear: 0.05,
  suctionFromRear: 0.05,
  jolt: 0,
};

/** W = m·g with the standard gravity, 9.80665 m/s² (3rd CGPM, 1901) [N] */
export const WEIGHT = 0.4 * 9.80665;
