import { z } from "zod";
import { BUILD } from "../limits.ts";
import { identifier } from "../scalar.ts";

const MOST_DEGREES = 180;

const diameter = () => z.coerce.number().positive().max(BUILD.diameter.max).optional();

/** Query of GET /builds/{id}/print-series: the need, and the sizes that are looked at. */
export const printSeriesQuery = z.strictObject({
  rotor: identifier()
    .optional()
    .describe("a rotor or open propeller of the book; the build's own unless given"),
  angle: z
    .union([z.literal("worst"), z.coerce.number().min(0).max(MOST_DEGREES)])
    .default("worst")
    .describe('degrees, 0 to 180, or "worst"'),
  mode: z.enum(["parked", "driving"]).default("driving"),
  margin: z.coerce
    .number()
    .min(BUILD.targetMargin.min)
    .max(BUILD.targetMargin.max)
    .optional()
    .describe("wanted there; the build's target margin unless given"),
  from: diameter().describe("m, where the sizes begin; 0.7 of the build's own unless given"),
  to: diameter().describe("m, where they end; 1.7 of the build's own unless given"),
});

/** Answer of GET /builds/{id}/print-series. */
export const printSeriesResponse = z.strictObject({
  rotor: z.string(),
  least: z
    .strictObject({ diameter: z.number().describe("m"), packPower: z.number().nullable().describe("W") })
    .nullable()
    .describe("of least watts among the sizes that keep every limit; null: none does"),
  known: z
    .number()
    .nullable()
    .describe(
      "what the curve alone leaves uncertain of the best sizes' watts, half of their 5 to 95 %; null: nothing, or no size keeps every limit",
    ),
  prints: z
    .array(
      z.strictObject({
        diameter: z.number().describe("m"),
        throttles: z
          .array(z.number())
          .describe("0 to 1, to take the readings at; of an open propeller those between which they lie"),
        isTested: z.boolean().describe("that size was tested before"),
        cut: z.number().describe("part of `known` that its test would take away, 0.01 to 1"),
      }),
    )
    .describe("greatest cut first, five at most; empty where none takes a hundredth"),
  together: z.number().nullable().describe("what the first three would take away; null for fewer"),
});
