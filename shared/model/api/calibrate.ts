import { z } from "zod";
import { supply, weather } from "../conditions.ts";
import { nonNegative, positive } from "../scalar.ts";
import { ductedRotor, motorInput, packInput, skirtInput, vehicleInput, warning } from "./predict.ts";

const MAX_PULLS = 300;
const MAX_LEAK_READINGS = 1000;

const skirt = skirtInput.refine((given) => given.edge === undefined || given.lossSum === undefined, {
  message: "give edge or lossSum, not both",
  path: ["lossSum"],
});
const air = weather.default({ temperature: 293.15, pressure: 101325, humidity: 0.5 });

/** As the body of POST /predict, with a ducted rotor; the gap and wheel friction in it don't count. */
const rig = z.strictObject({
  air,
  rotor: ductedRotor,
  motor: motorInput,
  pack: packInput,
  supply: supply.default({ duty: 1, driverResistance: 0, auxCurrent: 0 }),
  skirt,
  vehicle: vehicleInput,
});

const scatter = () => positive("", 1).default(0.05);

export const calibrateRequest = z.strictObject({
  prior: z
    .strictObject({
      gap: z.strictObject({ mean: nonNegative("m", 0.1), sd: positive("m", 0.1) }),
      friction: z.strictObject({ mean: nonNegative("", 5), sd: positive("", 5) }),
      pullFactor: z
        .strictObject({ median: positive("", 10), sd: positive("of its logarithm", 1) })
        .nullish()
        .describe("log-normal; without it the pull factor is as each rig says"),
    })
    .describe("what was held true before the tests: gap and friction normal, cut at 0"),
  scatter: scatter().describe("relative standard deviation of a single pull"),
  leakScatter: scatter().describe("relative standard deviation of a single flow reading"),
  meterUncertainty: nonNegative("", 1)
    .default(0.03)
    .describe("relative standard uncertainty that all flow readings share, the meter's"),
  pulls: z
    .array(
      z.strictObject({
        input: rig,
        direction: z.enum(["straight-off", "ceiling", "along"]),
        rigMass: nonNegative("kg, pressing on the floor in a pull along it", 100).optional(),
        held: nonNegative("N, on the surface, the rig's own weight accounted for", 1e6),
        letGo: nonNegative("N", 1e6).nullable(),
      }),
    )
    .max(MAX_PULLS),
  leaks: z
    .array(
      z.strictObject({
        input: z
          .strictObject({ skirt, air })
          .describe("the skirt with the openings that were open in the leak test, and no others"),
        pressure: positive("Pa", 1e5),
        flow: positive("m³/s", 100),
      }),
    )
    .max(MAX_LEAK_READINGS)
    .default([]),
});

const calibrated = z.strictObject({
  mean: z.number(),
  sd: z.number(),
  best: z.number().describe("most likely value, together with that of the other"),
  interval: z.tuple([z.number(), z.number().nullable()]).describe("95 %; 0 or null where that side is open"),
});

const moment = z.strictObject({ mean: z.number(), variance: z.number() });

export const calibrateResponse = z.strictObject({
  gap: calibrated,
  friction: calibrated.nullable().describe("null where no pull along the surface tells it"),
  pullFactor: calibrated
    .extend({ given: z.number().describe("its median at the mean gap") })
    .nullable()
    .describe("null where it isn't looked for, or no pull measures it"),
  joint: z
    .strictObject({
      gaps: z.array(z.number()),
      below: z.array(z.number()).describe("share of the gaps that are narrower"),
      friction: z.array(moment),
      logFactor: z.array(moment).describe("of the pull factor's logarithm"),
      covariance: z.array(z.number()).describe("of the two"),
    })
    .describe("all of it, to draw from: friction and the pull factor's logarithm at each of some gaps"),
  covariance: z.array(z.array(z.number())).describe("of gap and friction; of the gap alone without friction"),
  scatter: z.number().nullable().describe("most likely relative sd of a single pull; null without pulls"),
  logPosterior: z.number(),
  residuals: z.array(
    z.strictObject({
      pull: z.int().describe("place in the request"),
      predicted: z.number().describe("N"),
      before: z.number().describe("N, with gap and friction as in the prior"),
      held: z.number(),
      letGo: z.number().nullable(),
      inside: z.boolean(),
      deviation: z.number().describe("from the prediction to the bracket, in stated scatters"),
    }),
  ),
  leakResiduals: z.array(
    z.strictObject({
      predicted: z.number().describe("m³/s"),
      before: z.number().describe("m³/s, with the gap as in the prior"),
      measured: z.number(),
      deviation: z.number(),
    }),
  ),
  warnings: z.array(warning),
});
