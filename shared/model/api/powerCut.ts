import { z } from "zod";
import { positive } from "../scalar.ts";
import { needsSkirt, predictBody } from "./predict.ts";

/** Body of POST /power-cut: that of /predict, and what turns on. */
export const powerCutRequest = z
  .strictObject({ ...predictBody, inertia: positive("kg·m², of rotor and motor together", 1) })
  .refine(needsSkirt.check, needsSkirt.otherwise);

const seconds = z.number().nullable();

/** Answer of POST /power-cut. */
export const powerCutResponse = z.strictObject({
  attitudes: z
    .array(
      z.strictObject({
        angle: z.number().describe("degrees"),
        parked: seconds.describe(
          "s until it lets go; 0 where it isn't held even while running, null where no pull is needed",
        ),
        driving: seconds.describe("likewise, nose uphill"),
      }),
    )
    .describe("floor, wall, ceiling and the worst, parked and driving"),
  toHold: seconds.describe(
    "s from switching on, cold, until every one of them holds, parked; null where one never does",
  ),
});
