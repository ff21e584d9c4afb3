import { z } from "zod";
import { ROTOR } from "../limits.ts";
import { count, name, nonNegative, note, positive, retired, within } from "../scalar.ts";
import { statedOf } from "../stated.ts";
import { MATERIAL_KEYS } from "./materials.ts";

/** One size in which a rotor family is printed or planned. */
export const rotorSize = z.strictObject({
  diameter: positive("m", ROTOR.sizes.diameter),
  mass: nonNegative("kg", ROTOR.sizes.mass).optional(),
  height: positive("m", ROTOR.sizes.height).optional(),
  tipClearance: nonNegative("m", ROTOR.sizes.tipClearance).optional(),
  price: nonNegative("any currency").optional(),
  leadTime: nonNegative("days until it is there", ROTOR.sizes.leadTime).optional(),
});

/** Shape in proportion to the diameter, from which an untested rotor is estimated. */
export const rotorGeometry = z.strictObject({
  bladeCount: count(ROTOR.geometry.bladeCount),
  bladeExitAngle: within("degrees from the tangent", ROTOR.geometry.bladeExitAngle),
  inletRatio: within("inlet diameter over rotor diameter", ROTOR.geometry.inletRatio),
  widthRatio: within("exit width over rotor diameter", ROTOR.geometry.widthRatio),
});

const OWN_FIGURES = ["density", "poissonRatio", "strength"] as const;

/** What the rotor is printed of: a usual material, own figures in its place, or both; the blades load the disc's rim. */
export const rotorMaterial = z
  .strictObject({
    preset: z
      .enum(MATERIAL_KEYS)
      .optional()
      .describe("a usual material; its figures stand where none is given"),
    density: positive("kg/m³", ROTOR.material.density).optional(),
    poissonRatio: within("", ROTOR.material.poissonRatio).optional(),
    strength: positive("Pa, across printed layers", ROTOR.material.strength).optional(),
    boreDiameter: nonNegative("m, hole for the shaft; 0: none", ROTOR.material.boreDiameter),
    bladeMass: nonNegative("kg, all blades of the first size together", ROTOR.material.bladeMass).optional(),
    rimThickness: positive("m, of the disc at its rim, first size", ROTOR.material.rimThickness).optional(),
    bladeHeight: positive(
      "m, of a blade that stands on its disc, free at its other end, first size",
      ROTOR.material.bladeHeight,
    ).optional(),
    bladeThickness: positive("m, of a blade, first size", ROTOR.material.bladeThickness).optional(),
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
  chord: positive("m, at 75 % radius of the first size", ROTOR.chord).optional(),
};

/** A rotor family: one geometry, several diameters. Its curve comes from the curve tests logged for it. */
export const rotor = z
  .strictObject({
    name: name(),
    ...figures,
    ...statedOf(figures),
    note: note(),
    retired: retired(),
  })
  .superRefine(({ material, sizes }, context) => {
    const least = Math.min(...sizes.map(({ diameter }) => diameter));
    if (!material || material.boreDiameter < least) return;
    const message = `Read ${material.boreDiameter} m; allowed: less than the rotor's diameter, ${least} m in its smallest size, for example 0.0015.`;
    context.addIssue({ code: "custom", path: ["material", "boreDiameter"], message });
  });

export type Rotor = z.output<typeof rotor>;
