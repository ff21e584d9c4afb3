import { z } from "zod";
import { fraction, name, nonNegative, note, positive } from "../scalar.ts";
import { statedOf } from "../stated.ts";

export const edgeShape = z.enum(["thin", "square", "rounded"]);

/** A fixed hole that leaks beside the lip: wheel slot, wire hole. */
export const openingPart = z.strictObject({
  area: positive("m²", 1),
  dischargeCoefficient: positive("", 1.2).default(0.61),
});

/** Drilled holes of one size, through the skirt or the cover. */
export const drilledHoles = z.strictObject({
  count: z.int().min(1).max(1000).default(1),
  diameter: positive("m", 0.5),
  thickness: nonNegative("m, of the wall", 0.5),
});

/** Equal short tubes side by side: a grille, a flow straightener. */
export const honeycombPart = z.strictObject({
  count: z.int().min(1).max(100_000),
  diameter: positive("m, bore of a tube", 0.1),
  length: positive("m, of the tubes", 1),
});

const figures = {
  perimeter: positive("m, along the lip", 20),
  area: positive("m², inside the lip", 10),
  land: nonNegative("m, lip width along the flow", 1),
  edge: edgeShape.default("square"),
  lossSum: nonNegative("entry plus exit loss, in the place of the edge's", 20).optional(),
  gap: nonNegative("m, stand-off as set or measured", 0.1),
  gapBasis: z
    .enum(["set", "measured"])
    .default("set")
    .describe("measured: with feeler gauges or shims under the finished vehicle"),
  openings: z.array(openingPart).max(40).default([]),
  holes: z.array(drilledHoles).max(40).default([]),
  honeycombs: z.array(honeycombPart).max(10).default([]),
  share: fraction().default(0).describe("share of the normal force that the skirt carries"),
  friction: nonNegative("skirt on the surface", 5).default(0.3),
  height: positive("m", 1).optional(),
  mass: nonNegative("kg", 50).optional(),
  price: nonNegative("any currency").optional(),
};

/** The skirt round the cavity: its lip, the land along the flow, the set gap, and what else is open. */
export const skirt = z.strictObject({
  name: name(),
  ...figures,
  ...statedOf(figures),
  note: note(),
});

export type Skirt = z.output<typeof skirt>;
