import { z } from "zod";
import { TEST_KINDS } from "../testKinds.ts";
import { crossing, namedJoint, prediction, verdict } from "./predict.ts";
import { attitudeSpread, doubt } from "./uncertainty.ts";

const [LEAST_SAMPLES, MOST_SAMPLES, SAMPLES] = [128, 20_000, 2048];

/** Query of GET /builds/{id}/verdict. */
export const verdictQuery = z.strictObject({
  samples: z.coerce
    .number()
    .int()
    .min(LEAST_SAMPLES)
    .max(MOST_SAMPLES)
    .default(SAMPLES)
    .describe("of the uncertainty, 128 to 20 000"),
});

const namedTest = { id: z.string(), kind: z.enum(TEST_KINDS), title: z.string(), date: z.string() };

const doubtWithJoint = doubt.extend({
  over: z
    .strictObject({
      joint: namedJoint,
      attitudes: z.array(attitudeSpread),
      worst: z.strictObject({ parked: attitudeSpread, driving: attitudeSpread }),
      shares: doubt.shape.shares.describe("over the joint, its own depth and width among them"),
    })
    .nullable()
    .describe("over the hardest joint of the surface; null without one"),
});

/** Answer of GET /builds/{id}/verdict: what the screen says of a stored build. */
export const verdictResponse = z.strictObject({
  verdict: verdict.describe("the reason ends with what to do about it"),
  prediction: prediction.describe("at the build's own charge and throttle"),
  crossings: z.array(crossing).describe("over each joint of the surface, the least margin first"),
  doubt: doubtWithJoint.nullable().describe("null where no uncertainty is stated"),
  marks: z
    .array(z.strictObject({ word: z.string(), what: z.string() }))
    .describe("what in it is contradicted, extrapolated, estimated, scaled, known by two points or stated"),
  restsOn: z.array(z.strictObject(namedTest)).describe("tests that the figures are based on"),
  leftOut: z
    .array(
      z.strictObject({
        ...namedTest,
        rows: z.array(z.int()).describe("counted from 0; empty where it is the whole test"),
        why: z.string(),
      }),
    )
    .describe("tests of its parts that no figure is based on; none was set aside by hand"),
});
