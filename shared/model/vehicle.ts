import { z } from "zod";
import { BUILD } from "./limits.ts";
import { anyNumber, fraction, nonNegative, positive, within } from "./scalar.ts";

/** What the vehicle is besides its fan: mass, wheels, where its weight and its suction act. */
export const vehicleShape = {
  mass: positive("kg", BUILD.vehicle.mass),
  skirtShare: fraction().default(0).describe("share of the normal force that the skirt carries"),
  rollingResistance: within("c_rr", BUILD.vehicle.rollingResistance).default(0.02),
  driven: z.enum(["both", "front", "rear"]).default("both"),
  wheelbase: positive("m, between the axle lines", BUILD.vehicle.wheelbase).default(0.11),
  track: positive("m, between the wheels of an axle", BUILD.vehicle.track).default(0.09),
  cgHeight: nonNegative("m, over the surface", BUILD.vehicle.cgHeight).default(0.02),
  cgFromRear: anyNumber("m, from the rear axle line", BUILD.vehicle.cgFromRear.max).default(0.055),
  suctionFromRear: anyNumber("m, from the rear axle line", BUILD.vehicle.suctionFromRear.max).default(0.055),
  jolt: nonNegative("extra weight as a share of g", BUILD.vehicle.jolt).default(0),
  jetArea: positive("m², exhaust", BUILD.vehicle.jetArea).nullable().default(null),
  jetAngle: within("degrees from straight off the surface", BUILD.vehicle.jetAngle).default(0),
  verticalStiffness: positive(
    "N/m, of tyres and springs together; null: rigid",
    BUILD.vehicle.verticalStiffness,
  )
    .nullable()
    .default(null),
  gapLoad: nonNegative("N on the vehicle when the gap was set; null: m·g", BUILD.vehicle.gapLoad)
    .nullable()
    .default(null),
};
