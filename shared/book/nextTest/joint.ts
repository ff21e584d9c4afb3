import type { Surface } from "../../model/parts/surface.ts";
import { findById } from "../book.ts";
import { jointDoubt, jointsOf } from "../jointsUnder.ts";
import type { Asked, Planned } from "./planned.ts";

/** What a depth gauge and a caliper leave of a joint that is measured at several places [m]. Judgement. */
const MEASURED = { depth: 3e-5, width: 1e-4 };

function measured(joint: Surface["joints"][number]): Surface["joints"][number] {
  const least = (size: "depth" | "width") => Math.min(MEASURED[size], jointDoubt(joint, size).sd);
  return { ...joint, depthUncertainty: least("depth"), widthUncertainty: least("width") };
}

/** @returns the joints of the surface measured with a depth gauge; null where there are none, or they are known as well already */
export function plannedJoint({ book, build }: Asked): Planned | null {
  const surface = findById(book.surfaces, build.surface);
  if (!surface || surface.data.joints.length === 0 || build.skirt === null) return null;
  const joints = jointsOf(surface.data);
  const coarse = joints.some((joint) => jointDoubt(joint, "depth").sd > MEASURED.depth);
  if (!coarse) return null;
  const data = { ...surface.data, joints: joints.map(measured) };
  return {
    key: "joint",
    kind: null,
    title: `Measure the joints of ${surface.data.name} at several places`,
    takes: "a depth gauge, or feeler blades under a straight edge, and a caliper; 10 minutes",
    book: {
      ...book,
      surfaces: book.surfaces.map((each) => (each.id === surface.id ? { ...each, data } : each)),
    },
    build,
  };
}
