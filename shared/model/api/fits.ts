import { z } from "zod";
import { weather } from "../conditions.ts";
import { anyNumber, nonNegative, positive, within } from "../scalar.ts";
import { warning } from "./predict.ts";

const MAX_POINTS = 5000;
const numbers = z.array(z.number());

export const rotorFitRequest = z.strictObject({
  diameter: positive("m", 5),
  points: z
    .array(
      z.strictObject({
        rpm: positive("rpm", 1e6),
        flow: nonNegative("m³/s", 100),
        pressure: anyNumber("Pa", 1e6),
        density: positive("kg/m³", 20).optional(),
        shaftPower: nonNegative("W", 1e6).optional(),
        weight: positive("", 1e12).optional(),
      }),
    )
    .min(1)
    .max(MAX_POINTS),
  degree: z.union([z.int().min(1).max(4), z.literal("auto")]).default("auto"),
});

export const rotorFitResponse = z.strictObject({
  psi: numbers,
  lambda: numbers.nullable(),
  degree: z.int(),
  reason: z.string(),
  residualSd: z.number(),
  rSquared: z.number(),
  aicc: z.number().nullable(),
  leaveOneOutSd: z.number().nullable(),
  covariance: z.array(numbers),
  phiMin: z.number(),
  phiMax: z.number(),
  stall: z.boolean(),
  outliers: z.array(z.int()),
  warnings: z.array(warning),
});

export const motorFitRequest = z.strictObject({
  rows: z
    .array(
      z.strictObject({
        voltage: nonNegative("V", 1e3),
        current: nonNegative("A", 1e4),
        rpm: nonNegative("rpm", 1e6),
        noLoad: z.boolean().optional(),
      }),
    )
    .min(1)
    .max(MAX_POINTS),
  resistance: positive("Ω", 1e4).optional(),
});

export const motorFitResponse = z.strictObject({
  kv: z.number(),
  resistance: z.number(),
  frictionTorque: z.number(),
  viscousTorque: z.number(),
  correlation: z.number().nullable().describe("of kv and resistance; null where one was given"),
  standardErrors: z.strictObject({ kv: z.number().nullable(), resistance: z.number().nullable() }),
  warnings: z.array(warning),
});

export const leakFitRequest = z.strictObject({
  points: z
    .array(z.strictObject({ pressure: anyNumber("Pa", 1e6), flow: anyNumber("m³/s", 100) }))
    .min(1)
    .max(MAX_POINTS),
});

export const leakFitResponse = z.strictObject({
  coefficient: z.number(),
  exponent: z.number(),
  standardErrors: z.strictObject({ coefficient: z.number().nullable(), exponent: z.number().nullable() }),
  warnings: z.array(warning),
});

export const propellerFitRequest = z.strictObject({
  diameter: positive("m", 5),
  chord: positive("m, at 75 % of the radius", 1).optional(),
  rows: z
    .array(
      z.strictObject({
        rpm: positive("rpm", 1e6),
        thrust: anyNumber("N", 1e5),
        shaftPower: nonNegative("W", 1e6).optional(),
        density: positive("kg/m³", 20).optional(),
        diameter: positive("m, where it differs", 5).optional(),
      }),
    )
    .min(1)
    .max(MAX_POINTS),
});

const line = z.tuple([z.number(), z.number()]).describe("coefficient at referenceReynolds, and per ln Re");

const lineCovariance = z.array(z.array(z.number())).nullable().describe("of coefficient and drift, 2 by 2");

export const propellerFitResponse = z.strictObject({
  thrust: line,
  power: line.nullable(),
  referenceReynolds: z.number(),
  testedReynolds: z.tuple([z.number(), z.number()]).describe("least and greatest of the rows"),
  chord: z.number(),
  residualSd: z.strictObject({ thrust: z.number(), power: z.number().nullable() }),
  standardErrors: z.strictObject({ thrust: z.number().nullable(), power: z.number().nullable() }),
  covariance: z.strictObject({ thrust: lineCovariance, power: lineCovariance }),
  dof: z.strictObject({ thrust: z.number(), power: z.number().nullable() }),
  warnings: z.array(warning),
});

export const pullFitRequest = z.strictObject({
  trials: z
    .array(z.strictObject({ held: nonNegative("N", 1e6), letGo: nonNegative("N", 1e6).nullable() }))
    .min(1)
    .max(1000),
  distribution: z.enum(["normal", "lognormal"]).default("normal"),
});

const interval = z.tuple([z.number(), z.number()]).nullable();

export const pullFitResponse = z.strictObject({
  mean: z.number(),
  sd: z.number(),
  median: z.number(),
  meanInterval: interval,
  sdInterval: interval,
  logLikelihood: z.number(),
  warnings: z.array(warning),
});

export const bleedRequest = z.strictObject({
  holes: z
    .array(
      z.strictObject({
        diameter: positive("m", 1),
        thickness: nonNegative("m", 1),
        count: z.int().min(1).max(10000).default(1),
        edge: z.enum(["sharp", "rounded"]).default("sharp"),
        dischargeCoefficient: within("", 0.1, 1.2).optional(),
      }),
    )
    .min(1)
    .max(12),
  pressure: nonNegative("Pa", 1e5),
  air: weather.optional(),
});

export const bleedResponse = z.strictObject({
  flow: z.number().describe("m³/s"),
  dischargeCoefficient: z.number().describe("of all holes together"),
  uncertainty: z.number().describe("standard uncertainty of the flow, relative"),
  warnings: z.array(warning),
});
