import { z } from "zod";
import { toSI } from "../../units/quantity.ts";
import type { TypedRectangle } from "../../units/rectangle.ts";
import { SKIRT } from "../limits.ts";
import { quantity } from "../quantity.ts";

const sides = z.strictObject({
  length: quantity("length", SKIRT.outline.length),
  width: quantity("length", SKIRT.outline.width),
  cornerRadius: quantity("length", SKIRT.outline.cornerRadius).optional(),
});

/** The lip's inner edge as a rectangle with equal corners; length along it, area and longest side follow. A size that can't be read is refused by itself. */
export const outlinePart = sides.superRefine((typed, context) => {
  if (!sides.safeParse(typed).success) return;
  const { length, width, cornerRadius } = typed;
  const radius = cornerRadius ? toSI(cornerRadius, "length") : 0;
  if (2 * radius <= Math.min(toSI(length, "length"), toSI(width, "length")) * (1 + ROUNDING)) return;
  const message = "At most half of the shorter side.";
  context.addIssue({ code: "custom", path: ["cornerRadius", "value"], message });
});

/** Of a unit's factor. */
const ROUNDING = 1e-9;

/** What follows from an outline. */
export interface Outline {
  /** along the lip [m] */
  readonly perimeter: number;
  /** inside the lip [m²] */
  readonly area: number;
  /** its longest straight side, between the corners [m] */
  readonly longestSide: number;
}

/**
 * What follows from a rectangle with round corners.
 *
 *     P = 2(L + W) − (8 − 2π)r;  A = L·W − (4 − π)r²;  longest side: max(L, W) − 2r
 *
 * @param typed - as typed, its corners no rounder than the shorter side allows
 * @returns length along it [m], area [m²], longest straight side [m]
 *
 * Valid for any rectangle. Source: plane geometry; a square of side a with r = a/2 is the circle
 */
export function outlineOf({ length, width, cornerRadius }: TypedRectangle): Outline {
  const [l, w] = [toSI(length, "length"), toSI(width, "length")];
  const r = cornerRadius ? toSI(cornerRadius, "length") : 0;
  return {
    perimeter: 2 * (l + w) - (8 - 2 * Math.PI) * r,
    area: l * w - (4 - Math.PI) * r * r,
    longestSide: Math.max(l, w) - 2 * r,
  };
}
