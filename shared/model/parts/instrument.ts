import { z } from "zod";
import { INSTRUMENT } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { name, note, retired, within } from "../scalar.ts";

/** What an instrument of the bench can measure. */
export const MEASURED = [
  "pressure",
  "flow",
  "speed",
  "current",
  "voltage",
  "load",
  "torque",
  "angle",
  "length",
] as const;

export type Measured = (typeof MEASURED)[number];

const measuring = <M extends Measured>(measured: M) =>
  z.strictObject({
    name: name(),
    measures: z.literal(measured),
    percent: within("% of the reading, the same for all its readings", INSTRUMENT.percent).optional(),
    absolute: quantity(measured, INSTRUMENT.absolute).optional(),
    resolution: quantity(measured, INSTRUMENT.resolution).optional(),
    note: note(),
    retired: retired(),
  });

/**
 * An instrument that tests name: what it measures, the part of a reading that it may be off by in all of them alike, the
 * fixed part that differs from reading to reading, and the step that it shows.
 */
export const instrument = z.discriminatedUnion("measures", [
  measuring("pressure"),
  measuring("flow"),
  measuring("speed"),
  measuring("current"),
  measuring("voltage"),
  measuring("load"),
  measuring("torque"),
  measuring("angle"),
  measuring("length"),
]);

export type InstrumentPart = z.output<typeof instrument>;
