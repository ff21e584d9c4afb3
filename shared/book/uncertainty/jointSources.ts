import type { JointSize } from "../../decide/joints/crossed.ts";
import { jointCause } from "../../decide/joints/uncertain.ts";
import type { Build } from "../../model/build.ts";
import { formatQuantity } from "../../units/format.ts";
import { type Book, findById } from "../book.ts";
import { jointDoubt, jointsOf, namedJoint } from "../jointsUnder.ts";
import type { UncertaintySource } from "./collector.ts";

const SIZES: readonly JointSize[] = ["depth", "width"];

/** The lip's law over a joint, where a leak test stands for it beside. */
function lawSources(skirt: string): Record<string, UncertaintySource> {
  const by = (what: string) =>
    ({ from: "default", what: `${what} of ${skirt} over a joint, ±\u202f15\u202f%`, test: null }) as const;
  return { "skirt.lossSum": by("edge loss"), "skirt.landFriction": by("friction along the lip") };
}

/** @returns where each uncertainty comes from that a build has over the joints of its surface alone, by the name of its cause or path */
export function jointSources(
  book: Book,
  { skirt, surface }: Pick<Build, "skirt" | "surface">,
): Record<string, UncertaintySource> {
  const under = findById(book.surfaces, surface)?.data;
  const lip = findById(book.skirts, skirt)?.data;
  if (!under || !lip || under.joints.length === 0) return {};
  const ofJoints = jointsOf(under).flatMap((joint) =>
    SIZES.map((size): [string, UncertaintySource] => {
      const { sd, stated } = jointDoubt(joint, size);
      const cause = jointCause(namedJoint(joint), size);
      const what = `${cause} on ${under.name}, ±\u202f${formatQuantity(sd, "length", { decimals: 2 })}`;
      return [cause, { from: stated ? "stated" : "default", what, test: null }];
    }),
  );
  return { ...lawSources(lip.name), ...Object.fromEntries(ofJoints) };
}
