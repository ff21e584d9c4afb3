import type { Group } from "../../../charts/frame.ts";
import { pushApart } from "../../../charts/labels.ts";
import type { Line, Mark, Plot, ShapeLabel, Tone } from "./plot.ts";
import type { Scales } from "./scales.ts";
import { shapePath } from "./shapes.ts";

interface EdgeLabel {
  readonly key: string;
  readonly text: string;
  readonly tone: Tone;
  readonly shape: number | null;
  readonly from: { readonly x: number; readonly y: number };
}

/** Width of a character of the chart's type, taken large [px]. */
export const CHARACTER = 6.7;

/** A name in the room that it has; what is cut off, the reading itself says whole. */
function shortened(text: string, room: number): string {
  const characters = Math.floor(room / CHARACTER);
  return text.length > characters ? `${text.slice(0, characters - 1).trimEnd()}…` : text;
}

const LINE_HEIGHT = 17;
const GAP = 14;
const GLYPH = 16;
const BASELINE = 4;

function lineLabel(line: Line, { x, y }: Scales): EdgeLabel[] {
  const end = line.points.at(-1);
  if (!line.label || !end) return [];
  const from = { x: x(end.x), y: y(end.y) };
  return [{ key: line.key, text: line.label, tone: line.tone, shape: null, from }];
}

function testLabel(test: ShapeLabel, marks: readonly Mark[], { x, y }: Scales): EdgeLabel[] {
  const own = marks.filter((mark) => mark.shape === test.shape && !mark.aside);
  const last = own.reduce<Mark | null>((far, mark) => (far && far.x >= mark.x ? far : mark), null);
  if (!last) return [];
  const from = { x: x(last.x), y: y(last.y) };
  return [{ key: test.key, text: test.text, tone: last.tone, shape: test.shape, from }];
}

/** @returns what stands at the right edge: each line's name at its end, each test's at its rightmost reading */
export function edgeLabels(plot: Plot, scales: Scales): EdgeLabel[] {
  const named = (plot.lines ?? []).flatMap((line) => lineLabel(line, scales));
  return [...named, ...(plot.shapes ?? []).flatMap((test) => testLabel(test, plot.marks ?? [], scales))];
}

/** Labels down the right edge, pushed apart, each led by a hairline from what it names. */
export function drawEdgeLabels(
  g: Group,
  labels: readonly EdgeLabel[],
  box: { width: number; height: number; room: number },
): void {
  const centres = pushApart(
    labels.map((label) => ({ at: label.from.y, size: LINE_HEIGHT })),
    -LINE_HEIGHT / 2,
    box.height + LINE_HEIGHT / 2,
  );
  const placed = labels.map((label, i) => ({ ...label, centre: centres[i] }));
  type Placed = (typeof placed)[number];
  const left = box.width + GAP;
  g.selectAll<SVGPathElement, Placed>(".leader")
    .data(placed, (label) => label.key)
    .join("path")
    .attr("class", "leader")
    .attr(
      "d",
      ({ from, centre }) => `M${Math.min(from.x + RING_GAP, left - 4)},${from.y}L${left - 2},${centre}`,
    );
  g.selectAll<SVGPathElement, Placed>(".curves-mark")
    .data(
      placed.filter((label) => label.shape !== null),
      (label) => label.key,
    )
    .join("path")
    .attr("class", (label) => `curves-mark tone-${label.tone}`)
    .attr("d", (label) => shapePath(label.shape ?? 0))
    .attr("transform", (label) => `translate(${left + GLYPH / 2},${label.centre})`);
  g.selectAll<SVGTextElement, Placed>("text")
    .data(placed, (label) => label.key)
    .join("text")
    .attr("class", (label) => `tone-text-${label.tone}`)
    .attr("x", (label) => left + 2 + (label.shape === null ? 0 : GLYPH))
    .attr("y", (label) => label.centre + BASELINE)
    .text((label) => shortened(label.text, box.room - GAP - 2 - (label.shape === null ? 0 : GLYPH)));
}

const RING_GAP = 8;
