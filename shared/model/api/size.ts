import { z } from "zod";
import { cell } from "../parts/pack.ts";
import { nonNegative, positive, within } from "../scalar.ts";
import { cellLimits, motorLimits, rotorBody } from "./makers.ts";
import { ductedRotor, needsSkirt, predictBody, propellerRotor, warning } from "./predict.ts";

/** A motor by its strength, whatever it is wound for. */
const motorFrame = z.strictObject({
  motorConstant: positive("N·m/√W, k_t over the root of the winding's resistance at 20 °C", 1e3),
  frictionTorque: nonNegative("N·m", 1e3).default(0),
  viscousTorque: nonNegative("N·m·s/rad", 10).default(0),
  thermalResistance: positive("K/W", 1e4).nullable().default(null),
});

const hold = z
  .strictObject({
    angle: z
      .union([within("degrees", 0, 180), z.literal("worst")])
      .optional()
      .describe('degrees, 0 to 180, or "worst"'),
    worst: z.literal(true).optional().describe("in the place of angle: the vehicle's own worst attitude"),
    margin: positive("", 100).describe("margin there, for example 1.5"),
    mode: z.enum(["parked", "driving"]).default("driving"),
  })
  .refine(({ angle, worst }) => (angle === undefined) !== (worst === undefined), {
    message: "give angle or worst, one of them",
    path: ["angle"],
  });

/** Body of POST /size: that of /predict with a motor by its strength, and what is wanted of it. */
export const sizeRequest = z
  .strictObject({
    ...predictBody,
    rotor: z.discriminatedUnion("kind", [
      ductedRotor.extend({ diameter: ductedRotor.shape.diameter.optional() }),
      propellerRotor,
    ]),
    motor: motorFrame,
    pull: positive("N, with the gap as set", 1e5).optional(),
    hold: hold.optional().describe("in the place of pull: a margin on an attitude"),
    diameters: z.array(positive("m", 5)).min(1).max(400),
    motorLimits: motorLimits
      .default({ windingLimit: null, ratedVoltage: null, maxCurrent: null })
      .describe("what isn't given isn't judged"),
    cellLimits: cellLimits.default({ maxCurrent: null, minimumVoltage: null }).describe("likewise"),
    rotorBody: rotorBody
      .nullable()
      .default(null)
      .describe("likewise; at rotor.diameter, its blades grow with the size"),
    cell: cell
      .optional()
      .describe("one cell, its open-circuit curve by charge: for run times, and limits at its full charge"),
  })
  .refine(needsSkirt.check, needsSkirt.otherwise)
  .refine(({ pull, hold }) => (pull === undefined) !== (hold === undefined), {
    message: "give pull or hold, one of them",
    path: ["pull"],
  });

const known = (unit: string) => z.number().nullable().describe(unit);

/** Answer of POST /size. */
export const sizeResponse = z.strictObject({
  rows: z.array(
    z.strictObject({
      diameter: z.number().describe("m"),
      pull: z.number().describe("N, with the gap as set"),
      pressure: known("Pa; null with a propeller"),
      flow: known("m³/s; null with a propeller"),
      airPower: known("W, flow times pressure: no fan does it with less"),
      phi: known("null with a propeller"),
      speed: known("rad/s"),
      shaftPower: known("W"),
      kv: known("rpm/V; null where no winding does it, and a note says why"),
      resistance: known("Ω at 20 °C, of that winding"),
      motorCurrent: known("A"),
      packCurrent: known("A, all loads included"),
      packPower: known("W at the pack's terminals, all loads included"),
      windingHeat: known("W"),
      windingTemperature: known("K, settled; null without a thermal resistance"),
      burstFactor: known("bursting speed over its own; null without rotorBody"),
      holdTime: known("s from a full cell down to the voltage given; null without a cell"),
      extrapolated: z.boolean(),
      exceeds: z.array(z.string()).describe("limits that it passes"),
      notes: z.array(warning),
    }),
  ),
  least: z
    .number()
    .nullable()
    .describe("index of the row that takes least from the pack and keeps every limit; null: none does"),
  nearest: z
    .strictObject({ pull: z.number().describe("N"), diameter: z.number().describe("m") })
    .nullable()
    .describe(
      "where none does: the greatest pull that keeps every limit; null also where there is hardly any",
    ),
});

export type SizeRequest = z.output<typeof sizeRequest>;
