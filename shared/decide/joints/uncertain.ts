import type { SharedCause } from "../shared.ts";
import type { StatedUncertainty } from "../uncertainty.ts";
import type { CrossedJoint, JointSize, NamedJoint } from "./crossed.ts";

/** @returns the name under which what is uncertain of a joint has its share: "depth of the glazing bar" */
export function jointCause({ name }: Pick<NamedJoint, "name">, size: JointSize): string {
  return `${size} of ${name}`;
}

/** What one standard uncertainty of a joint's depth or width does to the skirt over it; along a joint its width does nothing. */
function causesOf({ joint, way, build }: CrossedJoint): SharedCause[] {
  const { depth, width, uncertain } = joint;
  const { openings, joint: under } = build.skirt;
  const cause = (size: JointSize, path: string, by: number): SharedCause[] =>
    by > 0 ? [{ name: jointCause(joint, size), effects: [{ path, by }] }] : [];
  if (!uncertain) return [];
  if (way === "along") return under ? cause("depth", "skirt.joint.depth", uncertain.depth) : [];
  const area = openings[openings.length - 1]?.area ?? 0;
  if (!(depth > 0 && width > 0)) return [];
  const path = `skirt.openings.${openings.length - 1}.area`;
  return [
    ...cause("depth", path, (area * uncertain.depth) / depth),
    ...cause("width", path, (area * uncertain.width) / width),
  ];
}

/** Beside a measured leak the lip's law is asked over a joint alone, and is as unsure there as anywhere. */
function lawOf({ way, build }: CrossedJoint, lipLaw: number, asked: StatedUncertainty) {
  const { measuredLeak, lossSum = 0, land, landFriction } = build.skirt;
  if (way !== "along" || !measuredLeak || !(lipLaw > 0)) return {};
  const taken = new Set([
    ...Object.keys({ ...asked.uncertainty, ...asked.logNormal }),
    ...(asked.correlated ?? []).flatMap(({ paths }) => paths),
  ]);
  const law: Record<string, number> = {};
  if (lossSum > 0 && !taken.has("skirt.lossSum")) law["skirt.lossSum"] = lipLaw * lossSum;
  if (land > 0 && landFriction !== undefined && !taken.has("skirt.landFriction"))
    law["skirt.landFriction"] = lipLaw * landFriction;
  return law;
}

/**
 * What is uncertain in a build that stands over a joint.
 *
 *     along: d by u_d;  across: A = 2wd by A·u_d/d and A·u_w/w;  beside a measured leak K and f of the lip over the joint as well
 *
 * @param over - the build over the joint [SI]
 * @param asked - what is uncertain in it beside the joint [unit of each number]
 * @param lipLaw - standard uncertainty of K and f [-]
 * @returns the same with what the joint adds
 *
 * Valid for uncertainties small beside the sizes themselves; a depth is cut at 0. Source: JCGM 100:2008 (GUM), 5.1.2; docs/method/uncertainty.md
 */
export function uncertainOver(over: CrossedJoint, asked: StatedUncertainty, lipLaw = 0): StatedUncertainty {
  const causes = causesOf(over);
  const law = lawOf(over, lipLaw, asked);
  return {
    ...asked,
    uncertainty: { ...asked.uncertainty, ...law },
    ...(causes.length > 0 ? { shared: [...(asked.shared ?? []), ...causes] } : {}),
  };
}
