import { z } from "zod";
import { fraction, name, nonNegative, note, positive } from "../scalar.ts";
import { statedOf } from "../stated.ts";

export const edgeShape = z.enum(["thin", "square", "rounded"]);

/** A fixed hole that leaks beside the lip: wheel slot, wire hole. */
export const openingPart = z.strictObject({
  area: positive("m²", 1),
  dischargeCoefficient: positive("", 1.2).default(0.61),
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
