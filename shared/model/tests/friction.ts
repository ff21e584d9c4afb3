import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, setAside, testHead } from "./common.ts";

export const frictionRow = z.strictObject({
  held: quantity("angle", TESTS.friction.rows.held)
    .nullable()
    .default(null)
    .describe("steepest tilt that held"),
  slid: quantity("angle", TESTS.friction.rows.slid)
    .nullable()
    .describe("tilt at which it slid; null if stopped before"),
  setAside,
});

/** Friction test on a tilt board: the angle at which the vehicle (fan off) or a piece of skirt starts to slide. */
export const frictionTest = z.strictObject({
  kind: z.literal("friction"),
  ...testHead,
  surface: reference("surfaces"),
  contact: z.enum(["wheels", "skirt"]),
  skirt: reference("skirts")
    .nullable()
    .default(null)
    .describe("which skirt, where it was the skirt that slid"),
  instruments: z.strictObject({ angle: instrument("angle").optional() }).default({}),
  rows: z
    .array(frictionRow)
    .min(1)
    .max(1000)
    .superRefine((rows, context) => {
      rows.forEach((row, i) => {
        if (row.held || row.slid) return;
        context.addIssue({
          code: "custom",
          path: [i, "slid"],
          message: "give the tilt that held, the tilt at which it slid, or both",
        });
      });
    }),
});

/** As fits read it: whatever it names of the book is described in its place. */
export type FrictionTest = Inlined<z.output<typeof frictionTest>>;
