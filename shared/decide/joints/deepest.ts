import { answerOrNull, requirePositive } from "../../numeric/errors.ts";
import { findRoot } from "../../numeric/root.ts";
import type { JointWay } from "../../physics/joints.ts";
import type { PredictInput } from "../../physics/predict.ts";
import { pullBy, pulled, type Wanted, wantedMargin } from "../wanted.ts";
import { buildOver, type JointsUnder } from "./crossed.ts";

/** Deepest joint looked at [m]: beyond it none is crossed, a vehicle would drive into it. Our choice. */
export const DEEPEST = 0.02;
/** Digits of the depth, relative. */
const TOLERANCE = 1e-10;

/** How deep a joint may be for one margin; beyond {@link DEEPEST} it isn't looked for. */
export interface Deepest {
  readonly state: "up-to" | "any" | "none";
  /** d at which the margin is just there [m]; null unless there is one */
  readonly depth: number | null;
}

/**
 * The deepest joint over which the wanted attitude keeps a margin.
 *
 *     m(d) = m_wanted, 0 ≤ d ≤ 20 mm
 *
 * @param build - beside the joint, SI
 * @param under - span [m] of a joint met along; width [m] of one met across
 * @param asked - how it is met, attitude [°], parked or driving, margin [-]
 * @returns depth [m]; "any" where even the deepest does, "none" where the margin isn't there beside a joint
 * @throws {OutOfRangeError} on a margin that is not above 0, with the path of a number that can't be
 *
 * Valid while more leak pulls less, as on a falling curve. Source: docs/method/restriction.md
 */
export function deepestJoint(
  build: PredictInput,
  under: { readonly span: number; readonly width: number },
  asked: Wanted & { readonly way: JointWay; readonly margin: number },
): Deepest {
  requirePositive("margin", asked.margin);
  const place: JointsUnder = { joints: [], span: under.span };
  const spare = (depth: number) => {
    const over = buildOver(build, place, { depth, width: under.width, met: asked.way }, asked.way);
    const margin = answerOrNull(() => wantedMargin(over.vehicle, pullBy(over, pulled(over)), asked)) ?? 0;
    return Math.min(margin, Number.MAX_VALUE) - asked.margin;
  };
  if (spare(0) < 0) return { state: "none", depth: null };
  if (spare(DEEPEST) >= 0) return { state: "any", depth: null };
  return { state: "up-to", depth: findRoot(spare, 0, DEEPEST, { tolerance: TOLERANCE }).root };
}
