import { toSI } from "../../units/quantity.ts";
import type { TypedRectangle } from "../../units/rectangle.ts";

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
