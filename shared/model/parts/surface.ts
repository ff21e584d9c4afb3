import { z } from "zod";
import { SURFACE } from "../limits.ts";
import { name, nonNegative, note, retired } from "../scalar.ts";
import { statedOf } from "../stated.ts";

const figures = {
  roughness: nonNegative("m, allowance added to the gap", SURFACE.roughness).default(0),
  wheelFriction: nonNegative("wheels on this surface", SURFACE.wheelFriction).optional(),
  skirtFriction: nonNegative(
    "skirt on this surface, in the place of the skirt's own",
    SURFACE.skirtFriction,
  ).optional(),
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
