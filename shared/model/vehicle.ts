import { z } from "zod";
import { anyNumber, fraction, nonNegative, positive, within } from "./scalar.ts";

/** What the vehicle is besides its fan: mass, wheels, where its weight and its suction act. */
export const vehicleShape = {
  mass: positive("kg", 1e4),
  skirtShare: fraction().default(0).describe("share of the normal force that the skirt carries"),
  rollingResistance: within("c_rr", 0, 2).default(0.02),
  driven: z.enum(["both", "front", "rear"]).default("both"),
  wheelbase: positive("m, between the axle lines", 20).default(0.11),
  track: positive("m, between the wheels of an axle", 20).default(0.09),
  cgHeight: nonNegative("m, over the surface", 20).default(0.02),
  cgFromRear: anyNumber("m, from the rear axle line", 20).default(0.055),
  suctionFromRear: anyNumber("m, from the rear axle line", 20).default(0.055),
  jolt: nonNegative("extra weight as a share of g", 20).default(0),
  jetArea: positive("m², exhaust", 1).nullable().default(null),
  jetAngle: within("degrees from straight off the surface", 0, 180).default(0),
};
