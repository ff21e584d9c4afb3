import { headOf } from "./number.ts";
import { parseQuantity } from "./parse.ts";
import { refusalText, type TypedQuantity, toSI, UnitError } from "./quantity.ts";
import type { Reading } from "./readNumber.ts";

/** A rectangle as a person typed it, each of its sizes with its unit. */
export interface TypedRectangle {
  readonly length: TypedQuantity;
  readonly width: TypedQuantity;
  /** of all four corners; left out where they are sharp */
  readonly cornerRadius?: TypedQuantity;
}

export const RECTANGLE_EXAMPLE = "110 × 90 mm, r 12 mm";
const ALLOWED = "two sides and, if the corners are round, their radius";

/** Two sides with a sign or a word between them, and the radius behind its letter or word. */
const TWO_SIDES =
  /^(.+?)\s*(?:[×✕*]|x(?=[\s\d.,½¼¾])|\bby\b)\s*(.+?)\s*(?:[,;]?\s*\(?\b(?:corner radius|corners?|radius|r)\s*=?\s*(?=[\d.,½¼¾])(.+?)\)?)?$/iu;

const hasUnit = (text: string): boolean => (headOf(text)?.rest.trim() ?? "") !== "";

function sizes(text: string, meant: string): TypedRectangle | null {
  const [, first, second, corner] = TWO_SIDES.exec(text) ?? [];
  if (first === undefined || second === undefined) return null;
  const width = hasUnit(second) ? parseQuantity(second, "length") : null;
  const length = parseQuantity(first, "length", width?.unit ?? meant);
  const typed = { length, width: width ?? parseQuantity(second, "length", length.unit) };
  if (corner === undefined) return typed;
  return { ...typed, cornerRadius: parseQuantity(corner, "length", typed.width.unit) };
}

/**
 * Reads a rectangle as people write it.
 *
 * @param text - "110 × 90 mm", "4 1/2 x 3 in", "110 mm × 90 mm, r 12"
 * @param unit - the unit of length meant where neither side has one
 * @returns its sizes as typed; a side without a unit has the other's, a radius that of the sides
 */
export function readRectangle(text: string, unit = "mm"): Reading<TypedRectangle> {
  const refused = (reason: string) => ({
    message: refusalText(text.trim(), ALLOWED, RECTANGLE_EXAMPLE, reason),
  });
  try {
    const typed = sizes(text.trim(), unit);
    if (typed === null) return refused("");
    const [length, width] = [toSI(typed.length, "length"), toSI(typed.width, "length")];
    const radius = typed.cornerRadius ? toSI(typed.cornerRadius, "length") : 0;
    if (!(length > 0 && width > 0)) return refused("A side is more than 0.");
    if (!(radius >= 0 && 2 * radius <= Math.min(length, width)))
      return refused("The corners' radius is at most half of the shorter side.");
    return typed;
  } catch (error) {
    if (!(error instanceof UnitError)) throw error;
    return refused(error.reason);
  }
}

/** @returns a rectangle as it would be typed; reads back as the same */
export function rectangleText({ length, width, cornerRadius }: TypedRectangle): string {
  const first = length.unit === width.unit ? `${length.value}` : `${length.value} ${length.unit}`;
  const sides = `${first} × ${width.value} ${width.unit}`;
  return cornerRadius ? `${sides}, r ${cornerRadius.value} ${cornerRadius.unit}` : sides;
}
