import { z } from "zod";
import { formatPlain } from "../../units/format.ts";
import { SKIRT } from "../limits.ts";
import { count, fraction, name, nonNegative, note, positive, retired } from "../scalar.ts";
import { statedOf } from "../stated.ts";
import { outlinePart } from "./outline.ts";

export const edgeShape = z.enum(["thin", "square", "rounded"]);

/** A fixed hole that leaks beside the lip: wheel slot, wire hole. */
export const openingPart = z.strictObject({
  area: positive("m²", SKIRT.openings.area),
  dischargeCoefficient: positive("", SKIRT.openings.dischargeCoefficient).default(0.61),
});

/** Drilled holes of one size, through the skirt or the cover. */
export const drilledHoles = z.strictObject({
  count: count(SKIRT.holes.count).default(1),
  diameter: positive("m", SKIRT.holes.diameter),
  thickness: nonNegative("m, of the wall", SKIRT.holes.thickness),
});

/** Equal short tubes side by side: a grille, a flow straightener. */
export const honeycombPart = z.strictObject({
  count: count(SKIRT.honeycombs.count),
  diameter: positive("m, bore of a tube", SKIRT.honeycombs.diameter),
  length: positive("m, of the tubes", SKIRT.honeycombs.length),
});

const figures = {
  perimeter: positive("m, along the lip", SKIRT.perimeter),
  area: positive("m², inside the lip", SKIRT.area),
  land: nonNegative("m, lip width along the flow", SKIRT.land),
  straightSide: nonNegative(
    "m, longest straight side of the lip, 0 of a ring; a quarter of the perimeter unless given",
    SKIRT.straightSide,
  ).optional(),
  edge: edgeShape.default("square"),
  lossSum: nonNegative("entry plus exit loss, in the place of the edge's", SKIRT.lossSum).optional(),
  gap: nonNegative("m, stand-off as set or measured", SKIRT.gap),
  gapBasis: z
    .enum(["set", "measured"])
    .default("set")
    .describe("measured: with feeler gauges or shims under the finished vehicle"),
  openings: z.array(openingPart).max(40).default([]),
  holes: z.array(drilledHoles).max(40).default([]),
  honeycombs: z.array(honeycombPart).max(10).default([]),
  share: fraction().default(0).describe("share of the normal force that the skirt carries"),
  friction: nonNegative("skirt on the surface", SKIRT.friction).default(0.3),
  height: positive("m", SKIRT.height).optional(),
  mass: nonNegative("kg", SKIRT.mass).optional(),
  price: nonNegative("any currency").optional(),
  leadTime: nonNegative("days until it is there", SKIRT.leadTime).optional(),
};

/** The skirt round the cavity: its lip, the land along the flow, the set gap, and what else is open. */
export const skirt = z
  .strictObject({
    name: name(),
    ...figures,
    outline: outlinePart.optional().describe("of the inner edge; perimeter and area follow from it"),
    ...statedOf(figures),
    note: note(),
    retired: retired(),
  })
  .superRefine(({ straightSide, perimeter }, context) => {
    if (straightSide === undefined || straightSide < perimeter / 2) return;
    const message = `Read ${formatPlain(straightSide)} m; allowed: less than half the lip's length of ${formatPlain(perimeter)} m, since the lip goes there and back, for example ${formatPlain(perimeter / 4, 2)}.`;
    context.addIssue({ code: "custom", path: ["straightSide"], message });
  });

export type Skirt = z.output<typeof skirt>;
