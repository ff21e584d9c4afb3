import type { JointSize, JointsUnder, NamedJoint } from "../decide/joints/crossed.ts";
import type { Build } from "../model/build.ts";
import { outlineOf } from "../model/parts/outlineOf.ts";
import type { Surface } from "../model/parts/surface.ts";
import { jointSpan } from "../physics/joints.ts";
import { formatQuantity } from "../units/format.ts";
import { decapitalised } from "./attitudes.ts";
import { type Book, findById } from "./book.ts";
import { LIP_LAW } from "./uncertainty/lipLaw.ts";

type StoredJoint = Surface["joints"][number];

/** How well a joint is known of which nothing is stated: a fixed part [m], and a part of its size [-], as it is read and as it goes on from place to place. Common practice, no source: docs/method/uncertainty.md, What was never measured here. */
const USUAL = {
  depth: { absolute: 1e-4, relative: 0.1 },
  width: { absolute: 3e-4, relative: 0.05 },
} as const;

/** @returns the joints of a surface, each with what it or the surface's own list states of its sizes' uncertainty */
export const jointsOf = ({ joints, uncertainty }: Pick<Surface, "joints" | "uncertainty">): StoredJoint[] =>
  joints.map((joint, i) => ({
    ...joint,
    depthUncertainty: joint.depthUncertainty ?? uncertainty[`joints.${i}.depth`],
    widthUncertainty: joint.widthUncertainty ?? uncertainty[`joints.${i}.width`],
  }));

/** What is uncertain of a joint's size, and whether its page says so. */
export interface JointDoubt {
  /** [m] */
  readonly sd: number;
  readonly stated: boolean;
}

/** @returns the standard uncertainty of a joint's depth or width: as stated, else the usual one; none of what isn't there */
export function jointDoubt(joint: StoredJoint, size: JointSize): JointDoubt {
  const stated = size === "depth" ? joint.depthUncertainty : joint.widthUncertainty;
  if (stated !== undefined) return { sd: stated, stated: true };
  const { absolute, relative } = USUAL[size];
  return { sd: joint[size] > 0 ? Math.hypot(absolute, relative * joint[size]) : 0, stated: false };
}

/** "the glazing bar"; a joint without a name by its depth. */
export function namedJoint(joint: StoredJoint): NamedJoint {
  const { name, depth, width, met } = joint;
  const called = name
    ? decapitalised(name)
    : `joint ${formatQuantity(depth, "length", { decimals: 2 })} deep`;
  const uncertain = { depth: jointDoubt(joint, "depth").sd, width: jointDoubt(joint, "width").sd };
  return { name: `the ${called}`, depth, width, met, uncertain };
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
  const surface = findById(book.surfaces, build.surface)?.data;
  const joints = surface ? jointsOf(surface) : [];
  const span = lipSpan(book, build);
  return joints.length === 0 || span === null
    ? null
    : { joints: joints.map(namedJoint), span, lipLaw: LIP_LAW };
}

/** @returns length of the lip that stands over a joint met along [m]; null without a skirt */
export function lipSpan(book: Book, build: Pick<Build, "skirt">): number | null {
  const skirt = findById(book.skirts, build.skirt)?.data;
  if (!skirt) return null;
  const { perimeter, straightSide, outline } = skirt;
  return jointSpan(perimeter, straightSide ?? (outline ? outlineOf(outline).longestSide : null));
}
