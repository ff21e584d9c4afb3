import { z } from "zod";

/** One field that was refused: its path ("skirt.gap", "rows.3.pressure") and what is wrong, allowed, an example. */
export const fieldError = z.strictObject({ path: z.string(), message: z.string() });

/** The one shape of every refusal. */
export const errorResponse = z.strictObject({
  error: z.strictObject({ code: z.string(), message: z.string(), fields: z.array(fieldError) }),
});

export type FieldError = z.output<typeof fieldError>;
export type ErrorResponse = z.output<typeof errorResponse>;
