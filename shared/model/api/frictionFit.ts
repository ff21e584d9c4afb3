import { z } from "zod";
import { within } from "../scalar.ts";
import { warning } from "./predict.ts";

/** A right angle is no tilt that a board slides at. */
const STEEPEST = 89.9;
const MOST_SLIDES = 1000;
const MOST_DOUBT = 10;

const tilt = (what: string) => within("°", 0, STEEPEST).nullable().describe(`°, 0 to ${STEEPEST}; ${what}`);

export const frictionFitRequest = z.strictObject({
  slides: z
    .array(
      z
        .strictObject({
          held: tilt("steepest tilt that held, null where the board rose steadily until it slid"),
          slid: tilt("tilt at which it slid, null where the board was stopped before"),
        })
        .refine(({ held, slid }) => held === null || slid === null || held <= slid, {
          path: ["held"],
          message: "the tilt that held is steeper than the one at which it slid",
        }),
    )
    .min(1)
    .max(MOST_SLIDES),
  angleUncertainty: within("°, standard uncertainty of the tilt", 0, MOST_DOUBT).default(0),
});

export const frictionFitResponse = z.strictObject({
  mu: z.number(),
  uncertainty: z.number().nullable().describe("standard, the tilt's own included"),
  sd: z.number().describe("of single slides; 0 where none is seen"),
  interval: z
    .tuple([z.number(), z.number()])
    .nullable()
    .describe("95 % of mu, without the tilt's own uncertainty"),
  warnings: z.array(warning),
});
