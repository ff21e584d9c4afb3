import { z } from "zod";
import { nonNegative, positive, within } from "../scalar.ts";

/** What the makers allow, and what a rotor is made of; null: not known. */
export const motorLimits = z.strictObject({
  windingLimit: within("K", 273.15, 600).nullable().default(null),
  ratedVoltage: positive("V", 1e3).nullable().default(null),
  maxCurrent: positive("A", 1e3).nullable().default(null),
});

const blades = z.strictObject({
  mass: nonNegative("kg, all of them together", 50),
  radius: positive("m, of their centre of gravity", 1),
  rimThickness: positive("m, of the disc at its rim", 1),
  count: z.int().min(1).max(200).nullable().default(null),
});

/** A blade that stands free on its disc. */
const standing = z.strictObject({
  height: positive("m, from the disc to its free end", 1),
  thickness: positive("m", 0.1),
  radius: positive("m, of its middle", 1),
  angle: within("degrees from the tangent", 0, 90),
});

export const rotorBody = z.strictObject({
  density: positive("kg/m³", 30000),
  poisson: within("", 0, 0.5),
  strength: positive("Pa, across printed layers", 1e10),
  boreDiameter: nonNegative("m, hole for the shaft; 0: none", 1),
  blades: blades.nullable().default(null),
  standing: standing.nullable().default(null).describe("its bending at the root; null: left out"),
});

export const cellLimits = z.strictObject({
  maxCurrent: positive("A, of one cell", 1e3).nullable().default(null),
  minimumVoltage: positive("V, of one loaded cell", 1e3).nullable().default(null),
});

/** A refinement of bodies that give a rotor and what it is made of. */
export const boreFits = {
  check: (body: {
    readonly rotor: { readonly diameter: number };
    readonly rotorBody: { readonly boreDiameter: number } | null;
  }): boolean => !body.rotorBody || body.rotorBody.boreDiameter < body.rotor.diameter,
  otherwise: {
    message: "the bore must be less than the rotor's diameter, for example 0.0015 m",
    path: ["rotorBody", "boreDiameter"],
  },
};
