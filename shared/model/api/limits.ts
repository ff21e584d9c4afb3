import { z } from "zod";
import { nonNegative, positive, within } from "../scalar.ts";
import { boreFits, motorLimits, rotorBody } from "./makers.ts";
import { needsSkirt, predictBody } from "./predict.ts";
import { cellPack, warmingMotor } from "./rundown.ts";

/** Body of POST /limits: that of /rundown, what the makers allow, and what the rotor is made of. */
export const limitsRequest = z
  .strictObject({
    ...predictBody,
    motor: warmingMotor,
    pack: cellPack,
    charge: within("fraction, held", 0, 1).default(1),
    motorLimits: motorLimits.default({ windingLimit: null, ratedVoltage: null, maxCurrent: null }),
    rotorBody: rotorBody.nullable().default(null).describe("null: its material isn't known"),
    rotorMass: positive("kg, with its blades", 50).nullable().default(null),
    fallHeight: nonNegative("m", 1000).nullable().default(null),
  })
  .refine(needsSkirt.check, needsSkirt.otherwise)
  .refine(boreFits.check, boreFits.otherwise);

const number = (meaning: string) => z.number().nullable().describe(meaning);

const limit = z.strictObject({
  key: z.enum(["winding", "motor-voltage", "motor-current", "cell-current", "cell-voltage", "rotor-speed"]),
  value: number("SI: K, V, A, rad/s; null where it isn't known"),
  limit: number("what it must not pass, likewise"),
  ratio: number("share of the way to the limit that is used; 1 at the limit"),
  verdict: z.enum(["within", "near", "beyond", "unknown"]),
  missing: z.string().nullable().describe("what gives what isn't known"),
  caution: z.enum(["motor", "cells", "rotor", "fall"]),
});

const rotor = z.strictObject({
  speed: z.number().describe("rad/s"),
  tipSpeed: z.number().describe("m/s"),
  mach: z.number(),
  stress: number("Pa"),
  strength: number("Pa"),
  factor: number("on speed: √(strength/stress); null at rest"),
  bending: number("Pa, at a blade's root; null: left out"),
  burstSpeed: number("rad/s"),
  safeSpeed: number("rad/s, half of the burst speed: at which it should not be run"),
});

/** Answer of POST /limits. */
export const limitsResponse = z.strictObject({
  charge: z.number(),
  first: z.strictObject({
    key: limit.shape.key.nullable(),
    time: number("s from switching on, cold; null where no time belongs to it"),
    sentence: z.string(),
  }),
  limits: z.array(limit),
  warmUp: z
    .strictObject({
      timeToLimit: number("s from cold; null where it never gets there, or no limit is known"),
      samples: z.array(z.strictObject({ time: z.number(), temperature: z.number() })).describe("s, K"),
    })
    .nullable()
    .describe("null without thermal resistance and time constant"),
  warmUpMissing: z.string().nullable(),
  overVoltage: z
    .strictObject({
      ratio: z.number().describe("motor voltage over the rated one"),
      of: z.enum(["pressure", "thrust"]),
      pressureRatio: z
        .number()
        .describe("of the pressure or the thrust, cold, over that at the rated voltage"),
      heatRatio: z.number().describe("of the heat in the winding, likewise"),
    })
    .nullable(),
  maxCurrent: z
    .strictObject({
      current: z.number().describe("A, the greatest that the motor's maker allows"),
      settlesAt: number("K, the winding at that current, held; null where it never settles"),
      limitCurrent: number("A, from which on it never settles; null where it sheds all its heat"),
      timeToLimit: number("s from cold to the winding's limit; null where it stays below, or isn't known"),
    })
    .nullable()
    .describe("null without the greatest current or the thermal resistance"),
  rotor,
  energies: z.array(
    z.strictObject({
      key: z.enum(["rotor", "blade", "tenth", "fall"]),
      energy: number("J"),
      speed: number("m/s"),
      missing: z.string().nullable(),
      caution: limit.shape.caution,
    }),
  ),
});

export type LimitsRequest = z.output<typeof limitsRequest>;
