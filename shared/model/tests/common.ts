import { z } from "zod";
import { TEST } from "../limits.ts";
import type { Measured } from "../parts/instrument.ts";
import { quantity } from "../quantity.ts";
import { reference } from "../reference.ts";
import { count, note, reason, struckOut, within } from "../scalar.ts";

/** The air of the day, as read off thermometer, barometer and hygrometer. */
export const airAsRead = z.strictObject({
  temperature: quantity("temperature", TEST.air.temperature),
  pressure: quantity("pressure", TEST.air.pressure),
  humidity: quantity("fraction", TEST.air.humidity),
});

/** What is said of an instrument in a test itself. */
const ownInstrument = (dimension: Measured) =>
  z
    .strictObject({
      percent: within("% of the reading", TEST.instruments.percent).optional(),
      absolute: quantity(dimension, TEST.instruments.absolute).optional(),
    })
    .describe("standard uncertainty: a part of the reading, a fixed amount, or both (added as squares)");

/** An instrument of the book by its identifier, or what is said of it in the test itself. */
export const instrument = (dimension: Measured) =>
  z.union([reference("instruments"), ownInstrument(dimension)]);

/** A row that stays in the book but not in the fit, and why. */
export const setAside = reason("leaving the row out");

export const testHead = {
  title: z.string().trim().max(120).default(""),
  date: z.iso.date().describe("day of the test, YYYY-MM-DD"),
  air: airAsRead.optional().describe("20 °C, 1013.25 hPa, 50 % unless read"),
  note: note(),
  struckOut: struckOut(),
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

const ownPlate = z.strictObject({ holes: z.array(plateHole).min(1).max(12) });

/** A bleed plate of the book by its identifier, or its holes as described in the test itself. */
export const plate = z.union([reference("plates"), ownPlate]);

/** How many holes of each kind were open in a row, in the plate's order. */
export const openHoles = z.array(count(TEST.open)).max(12);

export type AirAsRead = z.output<typeof airAsRead>;
export type Instrument = z.output<ReturnType<typeof ownInstrument>>;
export type Plate = z.output<typeof ownPlate>;

/** A test's data with whatever it names of the book described in its place. */
export type Inlined<T> = T extends object
  ? { readonly [K in keyof T]: K extends "plate" | "instruments" ? WithoutNames<T[K]> : T[K] }
  : T;

type WithoutNames<T> = T extends string
  ? never
  : T extends { readonly holes: unknown }
    ? T
    : { readonly [K in keyof T]: Exclude<T[K], string> };
