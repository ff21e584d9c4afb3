import { DEEPEST, type Deepest, deepestJoint } from "../../../../shared/decide/joints/deepest.ts";
import { marginText } from "../../../../shared/decide/verdict/figures.ts";
import type { Asked } from "../../../../shared/decide/ways/ways.ts";
import type { JointWay } from "../../../../shared/physics/joints.ts";
import type { PredictInput } from "../../../../shared/physics/predict.ts";
import { formatQuantity } from "../../../../shared/units/format.ts";
import type { WayCells } from "./wayWords.ts";

const STEP = 1e-5;

/** The lip that joints are met with. */
export interface JointQuestion {
  /** of lip over a joint met along [m] */
  readonly span: number;
  /** of the widest joint of the surface [m]; null: it has none, and only joints met along are answered for */
  readonly width: number | null;
}

/** How deep a joint may be, met in one way. */
export interface JointReach {
  readonly way: JointWay;
  /** [m] */
  readonly width: number | null;
  /** for margin 1 and for the one wanted; one where they are the same */
  readonly depths: readonly (Deepest & { readonly margin: number })[];
}

/** @returns how deep a joint the wanted attitude may be crossed with, met along and, where a width is known, across */
export function jointReaches(
  build: PredictInput,
  { span, width }: JointQuestion,
  asked: Asked,
): JointReach[] {
  const margins = [...new Set([1, asked.targetMargin])];
  const ways: readonly JointWay[] = width === null ? ["along"] : ["along", "across"];
  return ways.map((way) => ({
    way,
    width: way === "across" ? width : null,
    depths: margins.map((margin) => ({
      margin,
      ...deepestJoint(build, { span, width: width ?? 0 }, { ...asked, way, margin }),
    })),
  }));
}

/** Rounded down: a deeper one wouldn't do. */
const depthText = (depth: number) =>
  formatQuantity(Math.floor(depth / STEP) * STEP, "length", { decimals: 2 });

function reachedText({ state, depth, margin }: JointReach["depths"][number]): string {
  if (state === "none") return `none at ${marginText(margin)}`;
  if (state === "any" || depth === null) return `more than ${depthText(DEEPEST)} at ${marginText(margin)}`;
  return `${depthText(depth)} at ${marginText(margin)}`;
}

/** @returns the deepest joints as a row: "Deepest joint, along a side of the lip", "0.61 mm at 1.00 ×, 0.32 mm at 1.50 ×" */
export function jointCells({ way, width, depths }: JointReach): Omit<WayCells, "now"> {
  const met =
    way === "along"
      ? "along a side of the lip"
      : `across the lip, ${formatQuantity(width ?? 0, "length", { decimals: 1 })} wide`;
  return { label: `Deepest joint, ${met}`, goal: depths.map(reachedText).join(", ") };
}
