import { z } from "zod";
import { TEST } from "../limits.ts";
import { quantity } from "../quantity.ts";
import { count, note, within } from "../scalar.ts";

/** The air of the day, as read off thermometer, barometer and hygrometer. */
export const airAsRead = z.strictObject({
  temperature: quantity("temperature", TEST.air.temperature),
  pressure: quantity("pressure", TEST.air.pressure),
  humidity: quantity("fraction", TEST.air.humidity),
});

/** Standard uncertainty of one instrument: a part of the reading, a fixed amount, or both (added as squares). */
export const instrument = (dimension: Parameters<typeof quantity>[0]) =>
  z.strictObject({
    percent: within("% of the reading", TEST.instruments.percent).optional(),
    absolute: quantity(dimension, TEST.instruments.absolute).optional(),
  });

/** A row that stays in the book but not in the fit, and why. */
export const setAside = z
  .string()
  .trim()
  .min(1, "say why")
  .max(300)
  .optional()
  .describe("reason for leaving the row out");

export const testHead = {
  title: z.string().trim().max(120).default(""),
  date: z.iso.date().describe("day of the test, YYYY-MM-DD"),
  air: airAsRead.optional().describe("20 °C, 1013.25 hPa, 50 % unless read"),
  note: note(),
};

/** One kind of hole in a bleed plate. */
export const plateHole = z.strictObject({
  diameter: quantity("length", TEST.plate.holes.diameter),
  thickness: quantity("length", TEST.plate.holes.thickness),
  count: count(TEST.plate.holes.count),
  edge: z.enum(["sharp", "rounded"]).default("sharp"),
  dischargeCoefficient: within("", TEST.plate.holes.dischargeCoefficient)
    .optional()
    .describe("from a calibration of this plate"),
});

export const plate = z.strictObject({ holes: z.array(plateHole).min(1).max(12) });

/** How many holes of each kind were open in a row, in the plate's order. */
export const openHoles = z.array(count(TEST.open)).max(12);

export type AirAsRead = z.output<typeof airAsRead>;
export type Instrument = z.output<ReturnType<typeof instrument>>;
export type Plate = z.output<typeof plate>;
