import type { JointsUnder, NamedJoint } from "../decide/joints/crossed.ts";
import type { Build } from "../model/build.ts";
import { outlineOf } from "../model/parts/outlineOf.ts";
import type { Surface } from "../model/parts/surface.ts";
import { jointSpan } from "../physics/joints.ts";
import { formatQuantity } from "../units/format.ts";
import { decapitalised } from "./attitudes.ts";
import { type Book, findById } from "./book.ts";

/** "the glazing bar"; a joint without a name by its depth. */
function namedJoint(joint: Surface["joints"][number]): NamedJoint {
  const { name, depth, width, met } = joint;
  const called = name
    ? decapitalised(name)
    : `joint ${formatQuantity(depth, "length", { decimals: 2 })} deep`;
  return { name: `the ${called}`, depth, width, met };
}

/**
 * The joints that a build's vehicle crosses, and how much of its lip stands over one.
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns joints [m] and span [m]; null without a joint, and without a skirt
 * @throws {OutOfRangeError} on a straight side that the lip can't have
 */
export function jointsUnder(book: Book, build: Pick<Build, "skirt" | "surface">): JointsUnder | null {
  const joints = findById(book.surfaces, build.surface)?.data.joints ?? [];
  const span = lipSpan(book, build);
  return joints.length === 0 || span === null ? null : { joints: joints.map(namedJoint), span };
}

/** @returns length of the lip that stands over a joint met along [m]; null without a skirt */
export function lipSpan(book: Book, build: Pick<Build, "skirt">): number | null {
  const skirt = findById(book.skirts, build.skirt)?.data;
  if (!skirt) return null;
  const { perimeter, straightSide, outline } = skirt;
  return jointSpan(perimeter, straightSide ?? (outline ? outlineOf(outline).longestSide : null));
}
