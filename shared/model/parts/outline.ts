import { z } from "zod";
import { toSI } from "../../units/quantity.ts";
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
