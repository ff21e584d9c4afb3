import { z } from "zod";
import { cell } from "../parts/pack.ts";
import { positive } from "../scalar.ts";
import { needsSkirt, predictBody } from "./predict.ts";
import { wanted } from "./wanted.ts";

/** Body of POST /ways: a build as in /predict, the margin that is wanted, and the cell where run times are. */
export const waysRequest = z
  .strictObject({
    ...predictBody,
    ...wanted,
    targetMargin: positive("", 100).default(1.5),
    cell: cell
      .optional()
      .describe("one cell, its open-circuit curve by charge: for run times and the range of its voltage"),
  })
  .refine(needsSkirt.check, needsSkirt.otherwise);

const change = (unit: string) =>
  z.strictObject({ now: z.number(), after: z.number() }).nullable().describe(unit);

const effects = z.strictObject({
  windingTemperature: change("K, settled; null without a thermal resistance"),
  tipSpeed: change("m/s"),
  rotorStress: z.number().nullable().describe("stress after over now, for rotors of one shape and material"),
  packCurrent: change("A"),
  runTime: change("s; null without a cell"),
});

const end = (what: string) => z.number().nullable().describe(what);

/** What a controller that keeps the target margin would save of the charge. */
const keptWay = z.strictObject({
  keep: z.union([
    z.strictObject({ pressure: z.number().describe("Pa") }),
    z.strictObject({ thrust: z.number().describe("N, of an open propeller") }),
  ]),
  dutyAtStart: z.number().describe("0 to 1"),
  now: z.number().describe("s, to the end of the charge at the build's own throttle"),
  kept: z.number().describe("s, likewise, kept"),
  keeps: z.number().describe("s, until even full throttle is too little to keep it"),
});

/** Answer of POST /ways. */
export const waysResponse = z.strictObject({
  margin: z.number().nullable().describe("as it stands; null where no pull is needed"),
  kept: keptWay.nullable().describe("null without a cell, or where the margin is no more than the target"),
  ways: z.array(
    z.strictObject({
      handle: z.enum(["diameter", "series", "cellVoltage", "duty", "gap", "area", "mass", "wheelFriction"]),
      state: z.enum(["does", "already", "never"]).describe("alone, within its limits"),
      value: end("SI: how far it must go, or may; null where there is no such value"),
      bound: z.enum(["at-most", "at-least"]).nullable(),
      now: z.number(),
      limits: z.array(z.number()).length(2).describe("what was searched"),
      from: end("the target is met from here, null: from the lower limit"),
      to: end("to here, null: to the upper limit"),
      best: z.strictObject({
        value: z.number(),
        margin: z.number().nullable().describe("null where no pull is needed"),
      }),
      effects: effects
        .nullable()
        .describe("at the value, against now; null unless it is a change that does it"),
    }),
  ),
});
