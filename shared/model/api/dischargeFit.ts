import { z } from "zod";
import { nonNegative, positive, within } from "../scalar.ts";
import { warning } from "./predict.ts";

const MOST_READINGS = 5000;
const MOST_RUNS = 20;

const reading = z.strictObject({
  drawn: nonNegative("C, since full", 1e7),
  voltage: positive("V, of one cell", 100),
  current: nonNegative("A, of one cell; 0 at rest", 1e4),
});

/** Body of POST /fit/discharge: discharges of one cell from full, SI. */
export const dischargeFitRequest = z.strictObject({
  runs: z
    .array(
      z.strictObject({
        readings: z.array(reading).min(1).max(MOST_READINGS),
        emptied: z.boolean().default(true).describe("drawn until the loaded cell reached its minimum"),
      }),
    )
    .min(1)
    .max(MOST_RUNS),
  knownResistance: nonNegative("Ω of one cell, used where the readings can't tell it", 100)
    .nullable()
    .default(null),
  knownCapacity: positive("C of one cell, for a discharge that was stopped before", 1e7)
    .nullable()
    .default(null),
});

const place = z.strictObject({ charge: z.number(), voltage: z.number().describe("V") });

export const dischargeFitResponse = z.strictObject({
  curve: z
    .array(z.tuple([within("", 0, 1), z.number().describe("V")]))
    .describe("open-circuit, by rising charge"),
  resistance: z.number().describe("Ω of one cell"),
  resistanceError: z.number().nullable().describe("Ω; null where it isn't from the readings"),
  resistanceFrom: z
    .enum(["rests", "currents", "discharges", "known"])
    .describe(
      "rests or currents in turn within a discharge; discharges at different currents; from elsewhere",
    ),
  resistanceByCharge: z
    .array(
      z.strictObject({
        charge: z.number(),
        resistance: z.number().describe("Ω of one cell"),
        standardError: z.number().describe("Ω"),
      }),
    )
    .nullable()
    .describe("by rising charge, where the readings show that it varies; null: one for all charges"),
  capacity: z.number().describe("C of one cell"),
  capacityFrom: z.enum(["emptied", "known"]),
  residualSd: z.number().nullable().describe("V; null where the resistance isn't from the readings"),
  residuals: z.array(z.array(place)).describe("by run and reading: voltage less what the fit says"),
  warnings: z.array(warning),
});
