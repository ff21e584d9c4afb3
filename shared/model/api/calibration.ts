import { z } from "zod";
import { calibrateResponse } from "./calibrate.ts";

/** Answer of GET /builds/{id}/calibration. */
export const calibrationResponse = z.strictObject({
  request: z
    .record(z.string(), z.unknown())
    .nullable()
    .describe(
      "what the book handed to it: priors, pulls and leak readings, SI; null on fewer than two pulls at the set gap",
    ),
  answer: calibrateResponse.nullable().describe("as of POST /calibrate; null without an answer"),
  why: z.string().nullable().describe("why the tests can't be brought together"),
});

export type CalibrationResponse = z.output<typeof calibrationResponse>;
