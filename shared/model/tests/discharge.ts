import { z } from "zod";
import { TESTS } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { type Inlined, instrument, setAside, testHead } from "./common.ts";

export const dischargeRow = z.strictObject({
  charge: quantity("charge", TESTS.discharge.rows.charge)
    .optional()
    .describe("drawn since full, as the meter counts it"),
  time: quantity("time", TESTS.discharge.rows.time)
    .optional()
    .describe("since the start, where no charge was counted"),
  voltage: quantity("voltage", TESTS.discharge.rows.voltage),
  current: quantity("current", TESTS.discharge.rows.current).describe(
    "drawn while the voltage was read; 0 at rest",
  ),
  setAside,
});

interface Drawn {
  readonly charge?: unknown;
  readonly time?: unknown;
}

/** How much was drawn is counted in one way in every row. */
function checkDrawn(rows: readonly Drawn[], context: z.RefinementCtx): void {
  const counted = rows.filter((row) => row.charge !== undefined).length;
  if (counted === rows.length) return;
  const key = counted > 0 ? "charge" : "time";
  const message =
    key === "charge"
      ? 'the charge drawn is needed in each row, or in none and the time in each, for example "120 mAh"'
      : 'give the charge drawn so far, "120 mAh", or the time since the start, "12 min"';
  rows.forEach((row, i) => {
    if (row[key] === undefined) context.addIssue({ code: "custom", path: ["rows", i, key], message });
  });
}

/** Discharge test: voltage and current of a pack or a cell while it is drawn from full to empty, rests among the rows or not. */
export const dischargeTest = z
  .strictObject({
    kind: z.literal("discharge"),
    ...testHead,
    pack: reference("packs"),
    across: z
      .enum(["pack", "plug", "cell"])
      .default("pack")
      .describe(
        "voltage of the whole pack, of one cell of it at the balance plug, or of a single cell alone",
      ),
    end: z
      .enum(["empty", "stopped"])
      .default("empty")
      .describe("drawn down to the cell's minimum, or stopped before"),
    instruments: z
      .strictObject({ voltage: instrument("voltage").optional(), current: instrument("current").optional() })
      .default({}),
    rows: z.array(dischargeRow).min(1).max(5000),
  })
  .superRefine((test, context) => checkDrawn(test.rows, context));

/** As fits read it: whatever it names of the book is described in its place. */
export type DischargeTest = Inlined<z.output<typeof dischargeTest>>;
