import { z } from "zod";
import { anyNumber, nonNegative, positive } from "../scalar.ts";
import { warning } from "./predict.ts";

const MOST_POINTS = 1000;

/** Body of POST /fit/ride-height: heights of one lip under its loads, SI. */
export const rideHeightFitRequest = z.strictObject({
  points: z
    .array(
      z.strictObject({
        load: anyNumber("N beside the vehicle's own weight, below 0 where it is lifted", 1e6),
        height: nonNegative("m, of the lip; 0 where the skirt touches", 1),
      }),
    )
    .min(1)
    .max(MOST_POINTS),
  heightUncertainty: positive("m, standard, of one height; 2e-5 unless given", 0.1).optional(),
  loadUncertainty: nonNegative("N, standard, of one load", 1e6).optional(),
});

export const rideHeightFitResponse = z.strictObject({
  stiffness: z.number().describe("N/m"),
  height: z.number().describe("m, with nothing on the vehicle but its own weight"),
  standardErrors: z.strictObject({
    stiffness: z.number().describe("N/m"),
    height: z.number().describe("m"),
  }),
  dof: z.number().nullable().describe("behind the errors; null where the gauge's own uncertainty is"),
  residualSd: z.number().nullable().describe("m, about the line; null where no reading is left over"),
  warnings: z.array(warning),
});
