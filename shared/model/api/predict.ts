import { z } from "zod";
import { supply, weather } from "../conditions.ts";
import { drilledHoles, edgeShape, honeycombPart, openingPart } from "../parts/skirt.ts";
import { anyNumber, nonNegative, positive, within } from "../scalar.ts";
import { vehicleShape } from "../vehicle.ts";
import { boreFits, cellLimits, motorLimits, rotorBody } from "./makers.ts";
import { checkUncertainty, correlatedGroup, doubt } from "./uncertainty.ts";

const coefficients = (what: string) =>
  z.array(anyNumber("", 1e9)).min(1).max(9).describe(`${what}, ascending powers of φ`);

export const sizeCorrection = z.strictObject({
  testedDiameter: positive("m", 5),
  testedTipSpeed: positive("m/s", 1000),
  testedDensity: positive("kg/m³", 20).optional(),
  testedViscosity: positive("Pa·s", 1e-3).optional(),
});

export const ductedRotor = z.strictObject({
  kind: z.literal("ducted").default("ducted"),
  diameter: positive("m", 5),
  psi: coefficients("pressure coefficient ψ").refine((psi) => psi[0] > 0, {
    message: "ψ at no flow must be above 0",
  }),
  lambda: coefficients("power coefficient λ"),
  psiCovariance: z
    .array(z.array(anyNumber("", 1e12)).max(9))
    .max(9)
    .refine((rows) => rows.every((row) => row.length === rows.length), { message: "must be a square matrix" })
    .optional()
    .describe("covariance of psi's coefficients, as the fit gives it: a stall hump is judged against it"),
  phiMin: nonNegative("", 10).default(0),
  phiMax: positive("", 10),
  sizeCorrection: sizeCorrection.nullable().default(null),
});

const drifting = (what: string) =>
  z.tuple([anyNumber("", 10), anyNumber("", 10)]).describe(`${what} at referenceReynolds, and per ln Re`);

/** An open propeller that presses the vehicle on, with or without a skirt. */
export const propellerRotor = z.strictObject({
  kind: z.literal("propeller"),
  diameter: positive("m", 5),
  thrust: drifting("C_T"),
  power: drifting("C_P"),
  referenceReynolds: positive("", 1e9),
  chord: positive("m, at 75 % of the radius", 1),
  testedReynolds: z
    .tuple([positive("", 1e9), positive("", 1e9)])
    .optional()
    .describe("least and greatest that was tested"),
});

export const motorInput = z.strictObject({
  kv: positive("rpm/V", 1e6),
  resistance: positive("Ω at 20 °C", 1e4),
  frictionTorque: nonNegative("N·m", 1e3).default(0),
  viscousTorque: nonNegative("N·m·s/rad", 10).default(0),
  thermalResistance: positive("K/W", 1e4).nullable().default(null),
});

export const packInput = z.strictObject({
  series: z.int().min(1).max(60).default(1),
  parallel: z.int().min(1).max(60).default(1),
  openCircuitVoltage: positive("V per cell", 1000),
  cellResistance: nonNegative("Ω per cell", 100).default(0),
  wireResistance: nonNegative("Ω", 100).default(0),
});

export const measuredLeak = z.strictObject({
  coefficient: positive("m³/(s·Paˣ)", 10),
  exponent: within("", 0.5, 1),
  density: positive("kg/m³", 20).default(1.2),
  viscosity: positive("Pa·s", 1e-3).default(1.81e-5),
});

/** A joint of the surface under part of the lip. */
export const skirtJoint = z.strictObject({
  span: nonNegative("m, length of lip over it", 20),
  depth: nonNegative("m, how far the surface lies lower there", 1),
});

export const skirtInput = z.strictObject({
  perimeter: positive("m", 20),
  area: positive("m²", 10),
  gap: nonNegative("m", 0.1).default(0),
  roughness: nonNegative("m", 0.05).default(0),
  land: nonNegative("m", 1).default(0),
  edge: edgeShape.optional(),
  lossSum: nonNegative("", 20).optional().describe("entry plus exit loss, in the place of edge"),
  openings: z.array(openingPart).max(40).default([]),
  holes: z.array(drilledHoles).max(40).default([]).describe("drilled, beside the lip"),
  honeycombs: z.array(honeycombPart).max(10).default([]).describe("short tubes, beside the lip"),
  joint: skirtJoint.nullable().default(null),
  measuredLeak: measuredLeak.nullable().default(null),
});

export const vehicleInput = z.strictObject({
  ...vehicleShape,
  wheelFriction: nonNegative("", 5).default(0.7),
  skirtFriction: nonNegative("", 5).default(0.3),
  pullFactor: positive("on the cavity's part of the pull", 10).default(1),
});

const edgeOrLoss = skirtInput.refine((skirt) => skirt.edge === undefined || skirt.lossSum === undefined, {
  message: "give edge or lossSum, not both",
  path: ["lossSum"],
});

/** What every body has that gives a build inline, SI. */
export const predictBody = {
  air: weather.default({ temperature: 293.15, pressure: 101325, humidity: 0.5 }),
  rotor: z.discriminatedUnion("kind", [ductedRotor, propellerRotor]),
  motor: motorInput,
  pack: packInput,
  supply: supply.default({ duty: 1, driverResistance: 0, auxCurrent: 0 }),
  skirt: edgeOrLoss.nullable().optional().describe("null only with a propeller"),
  vehicle: vehicleInput,
};

/** The numbers that a prediction takes. */
export const predictInput = z.strictObject(predictBody);

/** A refinement of such bodies. */
export const needsSkirt = {
  check: (body: { readonly rotor: { readonly kind: string }; readonly skirt?: object | null }): boolean =>
    body.rotor.kind === "propeller" || (body.skirt !== null && body.skirt !== undefined),
  otherwise: { message: "a ducted rotor needs a skirt: perimeter, area, gap, land", path: ["skirt"] },
};

const NO_MOTOR_LIMITS = { windingLimit: null, ratedVoltage: null, maxCurrent: null };
const NO_CELL_LIMITS = { maxCurrent: null, minimumVoltage: null };

/** Body of POST /predict: one operating point, everything inline, SI. */
export const predictRequest = z
  .strictObject({
    ...predictBody,
    targetMargin: within("", 1, 20).default(1.5).describe("margin that is wanted, for the verdict"),
    motorLimits: motorLimits
      .default(NO_MOTOR_LIMITS)
      .describe("for the verdict; what isn't given isn't judged"),
    cellLimits: cellLimits.default(NO_CELL_LIMITS).describe("likewise"),
    rotorBody: rotorBody.nullable().default(null).describe("likewise"),
    uncertainty: z
      .record(z.string().max(64), nonNegative("standard uncertainty in the number's own unit"))
      .optional()
      .describe("standard uncertainty by path, for example skirt.gap or rotor.psi.0"),
    correlated: z
      .array(correlatedGroup)
      .max(20)
      .optional()
      .describe("numbers that are uncertain together, each group independent of the rest"),
    samples: z
      .int()
      .min(128)
      .max(20_000)
      .optional()
      .describe("of the uncertainty, 128 or more, 2048 unless given"),
    seed: z.int().min(0).max(4_294_967_295).optional().describe("of the samples, 1 unless given"),
  })
  .refine(needsSkirt.check, needsSkirt.otherwise)
  .refine(boreFits.check, boreFits.otherwise)
  .superRefine(checkUncertainty);

const nullableMargin = z.number().nullable();
const nullableGap = z.number().nullable().describe("m");
const governed = z.strictObject({ margin: nullableMargin, governs: z.array(z.string()) });

export const operatingPoint = z.strictObject({
  speed: z.number().describe("rad/s"),
  rpm: z.number(),
  flow: z.number().describe("m³/s"),
  pressure: z.number().describe("Pa"),
  phi: z.number(),
  psi: z.number(),
  lambda: z.number(),
  shaftPower: z.number().describe("W"),
  motorCurrent: z.number().describe("A"),
  packCurrent: z.number().describe("A"),
  packVoltage: z.number().describe("V"),
  windingTemperature: z.number().describe("K"),
  extrapolated: z.boolean(),
});

/** Of a propeller: what belongs to a cavity is null, thrust is added. */
export const propellerPoint = operatingPoint.extend({
  flow: z.null(),
  pressure: z.null(),
  phi: z.null(),
  psi: z.null(),
  lambda: z.null(),
  thrust: z.number().describe("N, towards the surface"),
});

export const warning = z.strictObject({ code: z.string(), message: z.string() });

export const verdict = z.strictObject({
  state: z
    .enum(["bursts", "burns", "falls", "over-rating", "tight", "unsure", "holds"])
    .describe("the worst that is found, worst first"),
  reason: z.string().describe("a sentence with the figures that decide"),
  angle: z
    .number()
    .optional()
    .describe("of the least margin, degrees; absent where none is needed or reached"),
  margin: z.number().optional().describe("the least one, parked and driving"),
});

/** What a build does at one state. */
export const prediction = z.strictObject({
  air: z.strictObject({ density: z.number(), viscosity: z.number(), soundSpeed: z.number() }),
  point: z.union([operatingPoint, propellerPoint]).nullable(),
  points: z.array(
    z.union([operatingPoint.extend({ stable: z.boolean() }), propellerPoint.extend({ stable: z.boolean() })]),
  ),
  suction: z.number().describe("N, jet included"),
  attitudes: z.array(
    z.strictObject({
      angle: z.number().describe("degrees"),
      margins: z.strictObject({
        liftOff: nullableMargin,
        slide: nullableMargin,
        tip: nullableMargin,
        climb: nullableMargin,
      }),
      parked: governed,
      driving: governed,
      gaps: z
        .strictObject({ liftOff: nullableGap, slide: nullableGap, tip: nullableGap, climb: nullableGap })
        .optional()
        .describe("only with verticalStiffness: the gap under the load at which each mode lets go"),
    }),
  ),
  worst: z.strictObject({
    parked: governed.extend({ angle: z.number() }),
    driving: governed.extend({ angle: z.number() }),
  }),
  warnings: z.array(warning),
});

/** A joint of a surface under the name that sentences give it. */
export const namedJoint = z.strictObject({
  name: z.string(),
  depth: z.number().describe("m"),
  width: z.number().describe("m"),
  met: z.enum(["along", "across", "either"]).describe("as the surface says"),
  uncertain: z
    .strictObject({ depth: z.number().describe("m"), width: z.number().describe("m") })
    .optional()
    .describe("standard uncertainties, as stated or the usual ones"),
});

/** What a build holds while it crosses a joint of its surface. */
export const crossing = z.strictObject({
  joint: namedJoint,
  way: z.enum(["along", "across"]).describe("of its ways the one that pulls least"),
  attitudes: z.array(
    z.strictObject({
      name: z.string(),
      angle: z.number(),
      parked: z.number().nullable(),
      driving: z.number().nullable(),
    }),
  ),
  worst: prediction.shape.worst,
});

/** Answer of POST /predict. */
export const predictResponse = z.strictObject({
  ...prediction.shape,
  verdict,
  doubt: doubt.optional().describe("only where uncertainties are given"),
});

export type PredictRequest = z.output<typeof predictRequest>;
