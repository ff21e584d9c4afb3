import { changesThatClose, measuredAt } from "../../decide/fitUp/change.ts";
import { dimensionsOf, type FitStack, MEASURED_TOLERANCE, type StackLine } from "./fitStack.ts";

/** One own dimension of a stack at the size at which the stack closes at its worst case. */
export interface Advised {
  readonly line: StackLine;
  /** [m] */
  readonly nominal: number;
  /** new less old size [m] */
  readonly by: number;
}

/** A printed dimension that is worth a test coupon before the long print. */
export interface Coupon {
  readonly stack: string;
  readonly line: StackLine;
  /** of the clearance's variance [-] */
  readonly share: number;
  /** whether the stack closes at its worst case once this stack's coupons came out as drawn and were measured */
  readonly settles: boolean;
}

/** Of the clearance's variance: what makes less of it isn't worth a print [-]. Judgement. */
const LEAST_SHARE = 0.1;

/** What the maker can draw anew: no part of the book, no room that must stay. */
const isOwn = ({ of, basis }: StackLine): boolean => of === null && basis !== "free";

/**
 * The dimension to change, and by how much, so that a stack closes at its worst case.
 *
 *     of those that the maker draws the space between the faces, else the largest
 *
 * @param fit - a stack of a build
 * @returns the change [m]; null where it closes, has no answer, or none of its own dimensions alone does it
 *
 * Valid for any stack. Source: {@link changesThatClose}
 */
export function dimensionToChange({ lines }: FitStack): Advised | null {
  const dimensions = dimensionsOf(lines);
  if (!dimensions) return null;
  const own = changesThatClose(dimensions).flatMap((change) => {
    const line = change && lines[change.place];
    return line && isOwn(line) ? [{ line, nominal: change.nominal, by: change.by }] : [];
  });
  const opens = own.find(({ line }) => line.sense === 1);
  return opens ?? own.sort((a, b) => (b.line.nominal ?? 0) - (a.line.nominal ?? 0))[0] ?? null;
}

/**
 * Printed dimensions worth a test coupon: in each stack that may not close, those as drawn that most of the uncertainty comes from.
 *
 *     share = q·t²/Σ q·t² of at least a tenth
 *
 * @param fits - the stacks of a build
 * @returns the coupons by share [-], largest first
 *
 * Valid for any stacks. Source: {@link measuredAt}; docs/method/fit-up.md, Print advice
 */
export function couponsOf(fits: readonly FitStack[]): Coupon[] {
  return fits
    .flatMap(({ name, lines, stack }) => {
      const dimensions = dimensionsOf(lines);
      if (!dimensions || stack?.verdict !== "may-not-close") return [];
      const share = (i: number) => stack.contributions[i].share;
      const places = lines.flatMap((line, i) =>
        isOwn(line) &&
        line.basis === "drawn" &&
        line.tolerance > MEASURED_TOLERANCE &&
        share(i) >= LEAST_SHARE
          ? [i]
          : [],
      );
      const settles = measuredAt(dimensions, places, MEASURED_TOLERANCE).verdict === "closes";
      return places.map((i) => ({ stack: name, line: lines[i], share: share(i), settles }));
    })
    .sort((a, b) => b.share - a.share);
}
