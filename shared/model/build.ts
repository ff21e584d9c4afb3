import { z } from "zod";
import { predictInput } from "./api/predict.ts";
import { supply, weather } from "./conditions.ts";
import { driveCycle } from "./cycle.ts";
import { exchanges } from "./exchanges.ts";
import { ledger, place } from "./ledger.ts";
import { BUILD } from "./limits.ts";
import { reference } from "./reference.ts";
import { count, fraction, name, nonNegative, note, positive, retired, within } from "./scalar.ts";
import { stacks } from "./stacks.ts";
import { uncertaintyOfInput } from "./stated.ts";
import { vehicleShape } from "./vehicle.ts";

/** An attitude the build must hold: a surface's inclination under a name of the user's. */
export const attitude = z.strictObject({
  name: name(),
  angle: within("degrees, 0 floor to 180 ceiling", BUILD.attitudes.angle),
});

/** What a what-if changed against the parts, kept when it is saved as a build of its own. */
export const overrides = z.strictObject({
  series: count(BUILD.overrides.series).optional(),
  gap: nonNegative("m", BUILD.overrides.gap).optional(),
  wheelFriction: nonNegative("", BUILD.overrides.wheelFriction).optional(),
});

const { skirtShare: _fromSkirt, mass: whole, ...ownShape } = vehicleShape;
const massOfWhole = whole
  .optional()
  .describe(
    "kg, > 0, everything on board as one number; without it the sum of the parts and the ledger's lines",
  );

/** A build: one set of choices, of which the views say what it will do. */
export const build = z
  .strictObject({
    name: name(),
    rotor: reference("rotors"),
    diameter: positive("m", BUILD.diameter),
    motor: reference("motors"),
    pack: reference("packs"),
    skirt: reference("skirts").nullable().default(null).describe("only a propeller's build may go without"),
    surface: reference("surfaces"),
    gear: reference("gears")
      .nullable()
      .default(null)
      .describe("running gear whose ride-height tests take the place of the stated stiffness"),
    charge: fraction().default(0.6).describe("state of charge at which the figures are shown"),
    supply: supply.default({ duty: 1, driverResistance: 0, auxCurrent: 0 }),
    air: weather.default({ temperature: 293.15, pressure: 101325, humidity: 0.5 }),
    vehicle: z.strictObject({ mass: massOfWhole, ...ownShape }),
    ledger: ledger.default([]).describe("what is on board beside motor, rotor, pack and skirt"),
    places: z
      .strictObject({
        rotor: place.optional(),
        motor: place.optional(),
        pack: place.optional(),
        skirt: place.optional(),
      })
      .default({})
      .describe("where its parts stand, for the centre of gravity"),
    exchanges: exchanges
      .default({ motors: [], rotors: [], packs: [], skirts: [] })
      .describe("parts of the book that swaps may try"),
    stacks: stacks.default([]).describe("parts between two faces of the housing, for Fit-up"),
    attitudes: z
      .array(attitude)
      .max(12)
      .default([])
      .describe("attitudes of the user's own, beside floor, wall and ceiling"),
    targetMargin: within("", BUILD.targetMargin).default(1.5),
    printRate: positive("kg/s that the printer lays down", BUILD.printRate).optional(),
    fallHeight: nonNegative("m, to the ground below where it works", BUILD.fallHeight).optional(),
    inertia: positive(
      "kg·m², of rotor and motor together; from their masses unless given",
      BUILD.inertia,
    ).optional(),
    cycle: driveCycle.optional().describe("what its drive draws, where, for what share of the time"),
    overrides: overrides.default({}),
    uncertainty: uncertaintyOfInput(predictInput, ["charge"]),
    note: note(),
    retired: retired(),
  })
  .superRefine(({ vehicle, ledger: lines }, context) => {
    if (vehicle.mass !== undefined || lines.length > 0) return;
    const message = "Missing; allowed: kg, > 0, everything on board, for example 0.18, or lines in ledger.";
    context.addIssue({ code: "custom", path: ["vehicle", "mass"], message });
  });

export type Build = z.output<typeof build>;
