import { z } from "zod";
import { estimatedFields, name, nonNegative, note, positive, uncertainties, within } from "../scalar.ts";

/** One size in which a rotor family is printed or planned. */
export const rotorSize = z.strictObject({
  diameter: positive("m", 2),
  mass: nonNegative("kg", 50).optional(),
  height: positive("m", 1).optional(),
  tipClearance: nonNegative("m", 0.1).optional(),
  price: nonNegative("any currency").optional(),
});

/** Shape in proportion to the diameter, from which an untested rotor is estimated. */
export const rotorGeometry = z.strictObject({
  bladeCount: z.int().min(2).max(200),
  bladeExitAngle: within("degrees from the tangent", 5, 90),
  inletRatio: within("inlet diameter over rotor diameter", 0.05, 1),
  widthRatio: within("exit width over rotor diameter", 0.005, 2),
});

export const rotorMaterial = z.strictObject({
  density: positive("kg/m³", 30000),
  poissonRatio: within("", 0, 0.5),
  strength: positive("Pa, across printed layers", 1e10),
  boreDiameter: nonNegative("m", 1),
});

/** A rotor family: one geometry, several diameters. Its curve comes from the curve tests logged for it. */
export const rotor = z.strictObject({
  name: name(),
  kind: z.enum(["ducted", "propeller"]).default("ducted"),
  form: z.enum(["axial", "mixed", "centrifugal"]).default("centrifugal"),
  sizes: z.array(rotorSize).min(1).max(40),
  geometry: rotorGeometry.optional(),
  material: rotorMaterial.optional(),
  chord: positive("m, at 75 % radius of the first size", 1).optional(),
  estimated: estimatedFields(),
  uncertainty: uncertainties(),
  note: note(),
});

export type Rotor = z.output<typeof rotor>;
