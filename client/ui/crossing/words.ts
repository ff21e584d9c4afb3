import type { Crossing } from "../../../shared/decide/verdict/findings.ts";
import type { JointWay } from "../../../shared/physics/joints.ts";
import { formatQuantity } from "../../../shared/units/format.ts";

const WAYS: Readonly<Record<JointWay, string>> = {
  along: "a side of the lip along it",
  across: "the lip across it",
};

/** @returns a joint as a title: "Glazing bar" */
export function jointTitle({ joint }: Pick<Crossing, "joint">): string {
  const name = joint.name.slice("the ".length);
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** @returns how deep and wide a joint is, and the way in which it is met that counts */
export function jointText({ joint, way }: Pick<Crossing, "joint" | "way">): string {
  const text = (length: number) => formatQuantity(length, "length", { decimals: length < 1e-3 ? 2 : 1 });
  return `${text(joint.depth)} deep, ${text(joint.width)} wide, ${WAYS[way]}`;
}
