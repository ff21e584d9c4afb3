import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, setAside, testHead } from "./common.ts";

/** How a part of a drive ended. */
export const RUN_OUTCOMES = ["held", "slid", "fell", "stalled"] as const;

export const runLogRow = z
  .strictObject({
    outcome: z
      .enum(RUN_OUTCOMES)
      .describe(
        "held; slid down; fell off (tipped or lifted off); stalled (wheels turned, or could not, and it did not climb)",
      ),
    angle: quantity("angle", TESTS["run-log"].rows.angle).describe(
      "inclination of the surface: 0° floor, 90° wall, 180° ceiling",
    ),
    driving: z.boolean().default(false).describe("false: it stood still"),
    voltage: quantity("voltage", TESTS["run-log"].rows.voltage)
      .optional()
      .describe("at the pack's terminals, under load"),
    charge: quantity("fraction", TESTS["run-log"].rows.charge)
      .optional()
      .describe("state of charge, where no voltage was read; the build's own without either"),
    time: quantity("time", TESTS["run-log"].rows.time).optional().describe("since it was switched on"),
    setAside,
  })
  .describe("one attitude of a drive, and how it ended");

/** Run log: what a build did on a real drive, to set beside what was predicted. */
export const runLogTest = z.strictObject({
  kind: z.literal("run-log"),
  ...testHead,
  build: reference("builds").describe("what was driven"),
  instruments: z.strictObject({}).default({}),
  rows: z.array(runLogRow).min(1).max(1000),
});

/** As fits read it: whatever it names of the book is described in its place. */
export type RunLogTest = Inlined<z.output<typeof runLogTest>>;
