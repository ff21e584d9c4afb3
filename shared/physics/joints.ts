import { OutOfRangeError, requireNonNegative } from "../numeric/errors.ts";
import { DEFAULT_DISCHARGE_COEFFICIENT } from "./restriction/opening.ts";
import type { SkirtInput } from "./skirt.ts";

/** How a lip meets a joint: one of its straight sides stands over it, or the lip crosses it at right angles. */
export type JointWay = "along" | "across";

/** A joint of a surface: a groove, a step, a glazing bar. */
export interface SurfaceJoint {
  /** how far the surface lies lower there, or stands higher beside it [m] */
  readonly depth: number;
  /** [m] */
  readonly width: number;
  readonly met: JointWay | "either";
}

/** A lip that goes round a cavity crosses a joint twice. */
const CROSSINGS = 2;
/** Part of the perimeter that a straight side of a skirt of unknown shape takes: that of a square. */
const SQUARE_SIDE = 0.25;

/** @returns the ways in which a joint can be met; "either" is both */
export function waysMet({ met }: SurfaceJoint): readonly JointWay[] {
  return met === "either" ? ["along", "across"] : [met];
}

/**
 * Length of lip that stands over a joint met along a side.
 *
 *     the longest straight side;  P/4 where the shape isn't known
 *
 * @param perimeter - P [m]
 * @param straightSide - of the skirt, the longest [m]; null: not known
 * @returns s [m]
 * @throws {OutOfRangeError} on a side below 0, or of half the perimeter and more, which no closed lip has
 *
 * Valid for any skirt; a square's side stands for an unknown one. Source: geometry; docs/method/restriction.md
 */
export function jointSpan(perimeter: number, straightSide: number | null): number {
  if (straightSide === null) return SQUARE_SIDE * perimeter;
  if (!(straightSide >= 0 && straightSide < perimeter / 2))
    throw new OutOfRangeError("skirt.straightSide", straightSide, `0 up to half the lip, ${perimeter / 2}`);
  return straightSide;
}

/**
 * The skirt as it stands over a joint.
 *
 *     along: s of the lip at h + d;  across: an opening of width × depth at each of two crossings, C_d 0.61
 *
 * @param skirt - on the surface beside the joint, SI
 * @param joint - depth and width [m]
 * @param way - how it is met
 * @param span - s, of the lip over a joint met along [m]
 * @returns the skirt over the joint; the skirt itself where nothing more is open
 * @throws {OutOfRangeError} on a depth or width below 0
 *
 * Valid for a joint wider than the lip where it is met along. Source: docs/method/restriction.md
 */
export function skirtOver(
  skirt: SkirtInput,
  { depth, width }: SurfaceJoint,
  way: JointWay,
  span: number,
): SkirtInput {
  requireNonNegative("joint.depth", depth);
  requireNonNegative("joint.width", width);
  if (way === "along") return depth > 0 && span > 0 ? { ...skirt, joint: { span, depth } } : skirt;
  const area = CROSSINGS * width * depth;
  if (area === 0) return skirt;
  const crossings = { area, dischargeCoefficient: DEFAULT_DISCHARGE_COEFFICIENT };
  return { ...skirt, openings: [...skirt.openings, crossings] };
}
