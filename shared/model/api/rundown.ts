import { z } from "zod";
import { driveCycle } from "../cycle.ts";
import { KEPT_SUCTION, KEPT_THRUST } from "../limits.ts";
import { cell } from "../parts/pack.ts";
import { nonNegative, positive, within } from "../scalar.ts";
import { motorInput, needsSkirt, predictBody, warning } from "./predict.ts";

export const cellPack = z.strictObject({
  series: z.int().min(1).max(60).default(1),
  parallel: z.int().min(1).max(60).default(1),
  wireResistance: nonNegative("Ω", 100).default(0),
  cell: cell.describe("one cell, its open-circuit curve by charge"),
});

export const warmingMotor = motorInput
  .extend({ thermalTimeConstant: positive("s, of the winding", 1e5).nullable().default(null) })
  .refine((motor) => motor.thermalTimeConstant === null || motor.thermalResistance !== null, {
    message: "a thermal time constant needs a thermal resistance, in K/W",
    path: ["thermalResistance"],
  });

/** Body of POST /rundown: that of /predict with a cell in the pack, everything inline, SI. */
export const rundownRequest = z
  .strictObject({
    ...predictBody,
    motor: warmingMotor,
    pack: cellPack,
    startCharge: positive("fraction", 1).default(1),
    targetMargin: positive("", 100).default(1.5),
    step: within("s", 0.01, 1).default(1),
    angles: z
      .array(within("degrees", 0, 180))
      .min(1)
      .max(12)
      .optional(),
    cycle: driveCycle.optional(),
    keep: z
      .union([
        z.strictObject({ pressure: positive("Pa, of a rotor in a duct", KEPT_SUCTION) }),
        z.strictObject({ thrust: positive("N, of an open propeller", KEPT_THRUST) }),
      ])
      .nullable()
      .default(null)
      .describe("a controller keeps this suction, or thrust, while it can, up to full throttle"),
  })
  .refine(needsSkirt.check, needsSkirt.otherwise)
  .refine(({ rotor, keep }) => keep === null || (rotor.kind === "ducted") === "pressure" in keep, {
    message: "give pressure for a rotor in a duct, thrust for an open propeller",
    path: ["keep"],
  });

const fall = z.strictObject({
  time: z.number().nullable().describe("s; null unless it falls"),
  packVoltage: z.number().nullable().describe("V, loaded; null unless it falls"),
  cellVoltage: z.number().nullable().optional().describe("V, loaded; only with a cycle"),
  state: z.enum(["falls", "holds-to-the-end", "never-held"]),
});

const judged = z.strictObject({
  driveCurrent: z.number().describe("A, of the segment it is judged by"),
  parked: z.boolean().describe("the cycle only ever parks there: the parked margin counts"),
});

const loadSample = z.strictObject({
  driveCurrent: z.number().describe("A"),
  suction: z.number().describe("N"),
  packVoltage: z.number().describe("V"),
  cellVoltage: z.number().describe("V, loaded"),
});

/** Answer of POST /rundown. */
export const rundownResponse = z.strictObject({
  end: z.strictObject({ time: z.number().describe("s"), reason: z.enum(["minimum-voltage", "empty"]) }),
  attitudes: z.array(
    z.strictObject({
      angle: z.number().describe("degrees"),
      holds: fall.describe("the driving margin falls below 1"),
      target: fall.describe("the driving margin falls below the target"),
      judged: judged.optional().describe("only with a cycle"),
    }),
  ),
  samples: z.array(
    z.strictObject({
      time: z.number().describe("s"),
      charge: z.number(),
      packVoltage: z.number().describe("V"),
      cellVoltage: z.number().describe("V, loaded"),
      rpm: z.number(),
      pressure: z.number().nullable().describe("Pa; null with a propeller"),
      suction: z.number().describe("N"),
      packCurrent: z.number().describe("A"),
      windingTemperature: z.number().describe("K"),
      duty: z.number().optional().describe("only with keep"),
      loads: z
        .array(loadSample)
        .optional()
        .describe("only with a cycle: under each drive current; the figures beside it are their mean"),
    }),
  ),
  warnings: z.array(warning),
  keep: z
    .strictObject({
      dutyAtStart: z.number(),
      fullThrottleFrom: z
        .number()
        .nullable()
        .describe("s: from then on even full throttle is too little; null: never"),
    })
    .optional()
    .describe("only with keep"),
});
