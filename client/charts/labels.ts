import type { Group } from "./draw/frame.ts";
import { pushApart } from "./draw/pushApart.ts";
import { clippedText } from "./draw/type.ts";

export * from "./draw/pushApart.ts";

export interface SideLabel {
  readonly key: string;
  readonly text: string;
  /** what the text ends with, kept where a long one is cut */
  readonly tail?: string;
  /** height in the plot that it speaks of [px] */
  readonly y: number;
  /** class of the text: "needed-text" */
  readonly tone: string;
}

const LINE_HEIGHT = 16;
const LEADER = 12;
const BASELINE = 4;
/** Between leader and text [px]. */
const GAP = 3;

/** Labels down the side of a plot at `x`, pushed apart, each led to its height by a hairline; cut where they would run off the drawing, which ends `room` from `x`. */
export function sideLabels(
  g: Group,
  labels: readonly SideLabel[],
  { x, height, room }: { readonly x: number; readonly height: number; readonly room: number },
): void {
  const half = LINE_HEIGHT / 2;
  const wanted = labels.map((label) => ({ at: label.y, size: LINE_HEIGHT }));
  const centres = pushApart(wanted, -half, height + half);
  const placed = labels.map((label, i) => ({ ...label, centre: centres[i] }));
  g.selectAll<SVGPathElement, (typeof placed)[number]>(".leader")
    .data(placed, (label) => label.key)
    .join("path")
    .attr("class", "leader")
    .attr("d", (label) => `M${x},${label.y}L${x + LEADER},${label.centre}`);
  g.selectAll<SVGTextElement, (typeof placed)[number]>("text")
    .data(placed, (label) => label.key)
    .join("text")
    .attr("class", (label) => label.tone)
    .attr("x", x + LEADER + GAP)
    .attr("y", (label) => label.centre + BASELINE)
    .text((label) => clippedText(label.text, label.tail ?? "", room - LEADER - GAP));
}
