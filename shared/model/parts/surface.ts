import { z } from "zod";
import { MOST_JOINTS, SURFACE } from "../limits.ts";
import { name, nonNegative, note, retired } from "../scalar.ts";
import { statedOf } from "../stated.ts";

/** A groove, a step or a bar of the surface that the vehicle crosses. */
export const surfaceJoint = z.strictObject({
  name: name().optional(),
  depth: nonNegative("m, how far one side lies lower", SURFACE.joints.depth),
  width: nonNegative("m", SURFACE.joints.width),
  depthUncertainty: nonNegative("m", SURFACE.joints.depthUncertainty)
    .optional()
    .describe("m, standard, of the depth; 0.1 mm and a tenth of it together unless given"),
  widthUncertainty: nonNegative("m", SURFACE.joints.widthUncertainty)
    .optional()
    .describe("m, standard, of the width; 0.3 mm and a twentieth of it together unless given"),
  met: z
    .enum(["along", "across", "either"])
    .default("either")
    .describe(
      "along: a straight side of the lip stands over it; across: the lip crosses it at right angles; either: the worse of the two counts",
    ),
});

const figures = {
  roughness: nonNegative("m, allowance added to the gap", SURFACE.roughness).default(0),
  wheelFriction: nonNegative("wheels on this surface", SURFACE.wheelFriction).optional(),
  skirtFriction: nonNegative(
    "skirt on this surface, in the place of the skirt's own",
    SURFACE.skirtFriction,
  ).optional(),
  joints: z
    .array(surfaceJoint)
    .max(MOST_JOINTS)
    .default([])
    .describe("what the vehicle must cross: margins while crossing stand beside the others"),
};

/** What the vehicle clings to: how rough it is under the lip, how the wheels hold on it. Friction tests take the place of the stated friction. */
export const surface = z.strictObject({
  name: name(),
  ...figures,
  ...statedOf(figures),
  note: note(),
  retired: retired(),
});

export type Surface = z.output<typeof surface>;
