import { z } from "zod";
import { quantity } from "../quantity.ts";
import { note, within } from "../scalar.ts";

/** The air of the day, as read off thermometer, barometer and hygrometer. */
export const airAsRead = z.strictObject({
  temperature: quantity("temperature", { min: 253.15, max: 333.15 }),
  pressure: quantity("pressure", { min: 30e3, max: 120e3 }),
  humidity: quantity("fraction", { min: 0, max: 1 }),
});

/** Standard uncertainty of one instrument: a part of the reading, a fixed amount, or both (added as squares). */
export const instrument = (dimension: Parameters<typeof quantity>[0]) =>
  z.strictObject({
    percent: within("% of the reading", 0, 100).optional(),
    absolute: quantity(dimension, { min: 0 }).optional(),
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
  diameter: quantity("length", { positive: true, max: 0.2 }),
  thickness: quantity("length", { min: 0, max: 0.2 }),
  count: z.int().min(1).max(1000),
  edge: z.enum(["sharp", "rounded"]).default("sharp"),
  dischargeCoefficient: within("", 0.1, 1.2).optional().describe("from a calibration of this plate"),
});

export const plate = z.strictObject({ holes: z.array(plateHole).min(1).max(12) });

/** How many holes of each kind were open in a row, in the plate's order. */
export const openHoles = z.array(z.int().min(0).max(1000)).max(12);

export type AirAsRead = z.output<typeof airAsRead>;
export type Instrument = z.output<ReturnType<typeof instrument>>;
export type Plate = z.output<typeof plate>;
