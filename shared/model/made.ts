import { z } from "zod";
import { STUFF_KEYS } from "./densities.ts";
import { BUILD } from "./limits.ts";
import { positive, within } from "./scalar.ts";

const { made: limits } = BUILD.ledger;

const material = {
  material: z.enum(STUFF_KEYS),
  density: positive("kg/m³, in the place of the material's", limits.density).optional(),
};

/** How a piece is made, where its mass comes from its drawing. */
export const made = z.discriminatedUnion("by", [
  z.strictObject({
    by: z.literal("volume"),
    ...material,
    volume: positive("m³, of the outer shape", limits.volume),
    infill: within("share of the inside that is filled", limits.infill).default(1),
    surface: positive("m², for the share of solid walls", limits.surface).optional(),
    wall: positive("m, thickness of solid walls", limits.wall).optional(),
  }),
  z.strictObject({
    by: z.literal("sheet"),
    ...material,
    area: positive("m²", limits.area),
    thickness: positive("m", limits.thickness),
  }),
]);

export type Made = z.output<typeof made>;
