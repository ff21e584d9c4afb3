import { z } from "zod";
import { TEST_KINDS } from "../testKinds.ts";
import { spread } from "./uncertainty.ts";

const MOST_DEGREES = 180;

/** Query of GET /builds/{id}/next-tests: the margin whose uncertainty is to shrink. */
export const nextTestsQuery = z.strictObject({
  angle: z.coerce
    .number()
    .min(0)
    .max(MOST_DEGREES)
    .optional()
    .describe("degrees, 0 to 180; the build's own worst attitude unless given"),
  mode: z.enum(["parked", "driving"]).default("parked"),
});

/** Answer of GET /builds/{id}/next-tests. */
export const nextTestsResponse = z.strictObject({
  angle: z.number().describe("degrees"),
  mode: z.enum(["parked", "driving"]),
  from: z
    .string()
    .describe(
      "tells the states of the records that it was worked out from: another where any of them is another",
    ),
  before: spread.nullable().describe("what the margin is known to now; null where no uncertainty is stated"),
  over: z
    .string()
    .nullable()
    .describe("the margin is that over this joint, the hardest of the surface; null without one"),
  tests: z
    .array(
      z.strictObject({
        key: z.string().describe('what it is, in one word or two: "pull-along", "plate", "weigh"'),
        kind: z.enum(TEST_KINDS).nullable().describe("of the test to log; null: the scale"),
        title: z.string(),
        takes: z.string().describe("what it needs, in words"),
        corrects: z.array(z.string()).describe("stored tests that it corrects, the newest first"),
        cut: z.number().describe("part of the margin's 5 to 95 % range that it would take away, 0.01 to 1"),
        after: spread.describe("what the margin would then be known to"),
      }),
    )
    .describe("greatest cut first; empty where none takes a hundredth"),
});

export type NextTestsResponse = z.output<typeof nextTestsResponse>;
