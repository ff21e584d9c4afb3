import { z } from "zod";
import { PLATE } from "../limits.ts";
import { count, name, note, positive, retired, within } from "../scalar.ts";
import { statedOf } from "../stated.ts";

/** One kind of hole drilled into a bleed plate. */
const drilled = z.strictObject({
  diameter: positive("m", PLATE.holes.diameter),
  count: count(PLATE.holes.count),
  edge: z.enum(["sharp", "rounded"]).default("sharp"),
});

const figures = {
  thickness: positive("m, of the plate where it is drilled", PLATE.thickness),
  holes: z.array(drilled).min(1).max(12),
  dischargeCoefficient: within("", PLATE.dischargeCoefficient)
    .optional()
    .describe("from a calibration of this plate, in the place of the law for its holes"),
};

/** A bleed plate: with a pressure reading it is the flow meter of the tests that name it. */
export const plate = z.strictObject({
  name: name(),
  ...figures,
  ...statedOf(figures),
  note: note(),
  retired: retired(),
});

export type PlatePart = z.output<typeof plate>;
