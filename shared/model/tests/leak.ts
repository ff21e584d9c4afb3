import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, openHoles, plate, setAside, testHead } from "./common.ts";
import { checkFlowReadings } from "./flow.ts";

export const leakRow = z.strictObject({
  pressure: quantity("pressure", TESTS.leak.rows.pressure).describe("suction in the cavity"),
  flow: quantity("flow", TESTS.leak.rows.flow).optional(),
  platePressure: quantity("pressure", TESTS.leak.rows.platePressure)
    .optional()
    .describe("drop over a bleed plate in series with the leak"),
  open: openHoles.optional(),
  setAside,
});

/** Leak test: flow through a skirt that stands on a surface, against the suction in its cavity. */
export const leakTest = z
  .strictObject({
    kind: z.literal("leak"),
    ...testHead,
    skirt: reference("skirts"),
    surface: reference("surfaces"),
    gap: quantity("length", TESTS.leak.gap)
      .optional()
      .describe("shim under the skirt, in the place of its set gap"),
    flowFrom: z.enum(["bleed-plate", "known-flow"]),
    plate: plate.optional(),
    instruments: z
      .strictObject({ pressure: instrument("pressure").optional(), flow: instrument("flow").optional() })
      .default({}),
    rows: z.array(leakRow).min(1).max(5000),
  })
  .superRefine(checkFlowReadings)
  .superRefine((test, context) => {
    if (test.flowFrom !== "bleed-plate") return;
    test.rows.forEach((row, i) => {
      if (row.platePressure) return;
      const message =
        "the drop over the plate is needed in each row, the plate stands in series with the leak";
      context.addIssue({ code: "custom", path: ["rows", i, "platePressure"], message });
    });
  });

/** As fits read it: whatever it names of the book is described in its place. */
export type LeakTest = Inlined<z.output<typeof leakTest>>;
