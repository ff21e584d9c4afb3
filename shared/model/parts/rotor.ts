import { z } from "zod";
import { name, nonNegative, note, positive, within } from "../scalar.ts";
import { statedOf } from "../stated.ts";
import { MATERIAL_KEYS } from "./materials.ts";

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

const OWN_FIGURES = ["density", "poissonRatio", "strength"] as const;

/** What the rotor is printed of: a usual material, own figures in its place, or both; the blades load the disc's rim. */
export const rotorMaterial = z
  .strictObject({
    preset: z
      .enum(MATERIAL_KEYS)
      .optional()
      .describe("a usual material; its figures stand where none is given"),
    density: positive("kg/m³", 30000).optional(),
    poissonRatio: within("", 0, 0.5).optional(),
    strength: positive("Pa, across printed layers", 1e10).optional(),
    boreDiameter: nonNegative("m, hole for the shaft; 0: none", 1),
    bladeMass: nonNegative("kg, all blades of the first size together", 50).optional(),
    rimThickness: positive("m, of the disc at its rim, first size", 1).optional(),
  })
  .superRefine((given, context) => {
    const lacking = given.preset ? undefined : OWN_FIGURES.find((figure) => given[figure] === undefined);
    if (lacking)
      context.addIssue({
        code: "custom",
        path: [lacking],
        message: `Missing; allowed: a number, or a preset that gives it: one of ${MATERIAL_KEYS.join(", ")}.`,
      });
    if (given.bladeMass !== undefined && given.rimThickness === undefined)
      context.addIssue({
        code: "custom",
        path: ["rimThickness"],
        message:
          "Missing beside bladeMass; allowed: the disc's thickness at its rim in m, for example 0.0015.",
      });
  });

const figures = {
  kind: z.enum(["ducted", "propeller"]).default("ducted"),
  form: z.enum(["axial", "mixed", "centrifugal"]).default("centrifugal"),
  sizes: z.array(rotorSize).min(1).max(40),
  geometry: rotorGeometry.optional(),
  material: rotorMaterial.optional(),
  chord: positive("m, at 75 % radius of the first size", 1).optional(),
};

/** A rotor family: one geometry, several diameters. Its curve comes from the curve tests logged for it. */
export const rotor = z
  .strictObject({
    name: name(),
    ...figures,
    ...statedOf(figures),
    note: note(),
  })
  .superRefine(({ material, sizes }, context) => {
    const least = Math.min(...sizes.map(({ diameter }) => diameter));
    if (!material || material.boreDiameter < least) return;
    const message = `Read ${material.boreDiameter} m; allowed: less than the rotor's diameter, ${least} m in its smallest size, for example 0.0015.`;
    context.addIssue({ code: "custom", path: ["material", "boreDiameter"], message });
  });

export type Rotor = z.output<typeof rotor>;
