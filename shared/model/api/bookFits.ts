import { z } from "zod";
import { TEST_KINDS } from "../testKinds.ts";
import { propellerFitResponse } from "./fits.ts";
import { warning } from "./predict.ts";

const numbers = z.array(z.number());
const byId = <T extends z.ZodType>(of: T) => z.record(z.string(), of);
const tipSpeeds = z
  .tuple([z.number(), z.number()])
  .nullable()
  .describe("m/s, least and greatest of the readings in use");
const testedDiameters = numbers.describe("m, by rising size");
const byCharge = z.array(z.tuple([z.number(), z.number()]));

const testCounts = z.partialRecord(z.enum(TEST_KINDS), z.int().min(1));

const rotorFitted = z.strictObject({
  basis: z.enum(["measured", "two-point"]),
  psi: numbers.describe("ψ in ascending powers of φ"),
  lambda: numbers.nullable().describe("λ likewise; null where its power is not known"),
  phiMin: z.number(),
  phiMax: z.number().describe("least and greatest φ of the readings"),
  testedDiameters,
  sizes: z
    .array(
      z.strictObject({
        testedDiameter: z.number().describe("m"),
        testedTipSpeed: z.number().describe("m/s, the middle of its readings"),
        testedDensity: z.number().describe("kg/m³, likewise"),
      }),
    )
    .describe("for the size correction; empty without λ"),
  tipSpeeds,
});

const propellerFitted = z.strictObject({
  basis: z.literal("measured"),
  fit: propellerFitResponse,
  chordRatio: z.number().describe("chord at 75 % of the radius over the diameter"),
  chordAssumed: z.boolean(),
  testedDiameters,
  tipSpeeds,
  lacksPower: z
    .strictObject({ path: z.string(), message: z.string(), test: z.enum(TEST_KINDS).optional() })
    .nullable()
    .describe("why its power is not known; null where it is"),
});

const motorFitted = z.strictObject({
  basis: z.literal("measured"),
  constants: z.strictObject({
    kv: z.number().describe("rpm/V"),
    resistance: z.number().describe("Ω"),
    frictionTorque: z.number().describe("N·m"),
    viscousTorque: z.number().describe("N·m·s/rad"),
  }),
  throttle: z
    .strictObject({
      offset: z.number(),
      standardError: z.number().nullable(),
      used: z.array(z.int()),
      saturated: z.array(z.int()),
      warnings: z.array(warning),
    })
    .nullable()
    .describe("where the throttle begins to turn it; null without a sweep"),
  thermal: z.strictObject({
    thermalResistance: z.number().nullable().describe("K/W"),
    thermalTimeConstant: z.number().nullable().describe("s"),
    basis: z.enum(["stated", "estimated", "unknown"]),
  }),
  notes: z.array(warning),
});

const packFitted = z.strictObject({
  basis: z.literal("measured"),
  cell: z.strictObject({
    capacity: z.number().describe("C"),
    minimumVoltage: z.number().describe("V, loaded"),
    resistance: z.number().describe("Ω"),
    resistanceCurve: byCharge
      .nullable()
      .optional()
      .describe("charge, Ω; absent or null: one for all charges"),
    curve: byCharge.describe("charge, V at rest"),
    maxCurrent: z.number().optional().describe("A"),
  }),
  capacityFrom: z.enum(["emptied", "known"]).nullable(),
  coldFactor: z.number().nullable(),
  toldAt: z.number().describe("K, the air that the resistance was read in"),
  rise: z.number(),
  notes: z.array(warning),
});

const surfaceFitted = z.strictObject({
  basis: z.enum(["stated", "measured separately"]),
  value: z.number().describe("m"),
  sd: z.number().nullable().describe("m; null where none is stated"),
  missing: z.string().nullable().describe("why the stated value stands; null where it was measured"),
});

/** Answer of GET /fits. */
export const bookFits = z.strictObject({
  tests: z
    .strictObject({
      rotor: byId(testCounts),
      motor: byId(testCounts),
      pack: byId(testCounts),
      skirt: byId(testCounts),
      surface: byId(testCounts),
      gear: byId(testCounts),
    })
    .describe("how many tests in force name each part of the book, by kind; kinds without one left out"),
  rotors: byId(rotorFitted).describe("those whose curve tests make a curve"),
  propellers: byId(propellerFitted).describe("rotors whose thrust tests make coefficients"),
  motors: byId(motorFitted).describe("those whose tests make their constants"),
  surfaces: byId(surfaceFitted).describe("roughness of those with a leak test"),
  packs: byId(packFitted).describe("those whose discharge tests make a curve"),
});
