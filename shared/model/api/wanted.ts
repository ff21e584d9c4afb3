import { z } from "zod";
import { within } from "../scalar.ts";

/** Which margin a question is about. */
export const wanted = {
  attitude: z
    .union([within("degrees", 0, 180), z.literal("worst")])
    .default("worst")
    .describe('degrees, 0 to 180, or "worst": the vehicle\'s own worst attitude'),
  mode: z.enum(["parked", "driving"]).default("parked"),
};
