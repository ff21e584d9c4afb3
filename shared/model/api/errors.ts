import { z } from "zod";

/** One field that was refused: its path ("skirt.gap", "rows.3.pressure") and what is wrong, allowed, an example. */
export const fieldError = z.strictObject({ path: z.string(), message: z.string() });

/** The one shape of every refusal: problem details (RFC 9457), and the same as `error` with its code and fields. */
export const errorResponse = z.strictObject({
  type: z.literal("about:blank").describe("the problem is what its status says"),
  title: z.string().describe("the status in words"),
  status: z.int().min(400).max(599),
  detail: z.string().describe("what is wrong with this request"),
  error: z.strictObject({ code: z.string(), message: z.string(), fields: z.array(fieldError) }),
});

/** Its content type. */
export const PROBLEM = "application/problem+json";

export type FieldError = z.output<typeof fieldError>;
export type ErrorResponse = z.output<typeof errorResponse>;
