import { z } from "zod";
import { driveCycle } from "./cycle.ts";
import { fraction, identifier, name, nonNegative, note, positive, uncertainties, within } from "./scalar.ts";
import { vehicleShape } from "./vehicle.ts";

/** An attitude the build must hold: a surface's inclination under a name of the user's. */
export const attitude = z.strictObject({
  name: name(),
  angle: within("degrees, 0 floor to 180 ceiling", 0, 180),
});

export const weather = z.strictObject({
  temperature: within("K", 253.15, 333.15).default(293.15),
  pressure: within("Pa", 30e3, 120e3).default(101325),
  humidity: fraction().default(0.5),
});

export const supply = z.strictObject({
  duty: within("fraction of the pack's voltage", 0, 1).default(1),
  driverResistance: nonNegative("Ω", 100).default(0),
  auxCurrent: nonNegative("A, other loads on the pack", 1e3).default(0),
});

/** What a what-if changed against the parts, kept when it is saved as a build of its own. */
export const overrides = z.strictObject({
  series: z.int().min(1).max(60).optional(),
  gap: nonNegative("m", 0.1).optional(),
  wheelFriction: nonNegative("", 5).optional(),
});

const { skirtShare: _fromSkirt, ...ownShape } = vehicleShape;

/** A build: one set of choices, of which the views say what it will do. */
export const build = z.strictObject({
  name: name(),
  rotor: identifier(),
  diameter: positive("m", 2),
  motor: identifier(),
  pack: identifier(),
  skirt: identifier().nullable().default(null).describe("only a propeller's build may go without"),
  surface: identifier(),
  charge: fraction().default(0.6).describe("state of charge at which the figures are shown"),
  supply: supply.default({ duty: 1, driverResistance: 0, auxCurrent: 0 }),
  air: weather.default({ temperature: 293.15, pressure: 101325, humidity: 0.5 }),
  vehicle: z.strictObject(ownShape),
  attitudes: z
    .array(attitude)
    .max(12)
    .default([])
    .describe("attitudes of the user's own, beside floor, wall and ceiling"),
  targetMargin: within("", 1, 20).default(1.5),
  fallHeight: nonNegative("m, to the ground below where it works", 1000).optional(),
  cycle: driveCycle.optional().describe("what its drive draws, where, for what share of the time"),
  overrides: overrides.default({}),
  uncertainty: uncertainties().describe(
    "standard uncertainty by path, for example skirt.gap or vehicle.mass",
  ),
  note: note(),
});

export type Build = z.output<typeof build>;
