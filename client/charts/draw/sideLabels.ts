import type { Level, Line, Mark, Plot, ShapeLabel, SideText, Tone } from "../model/plot.ts";
import type { Group } from "./frame.ts";
import type { Straight } from "./ground.ts";
import { pushApart } from "./pushApart.ts";
import { shapePath } from "./shapes.ts";
import { BASELINE, clippedText, LINE_HEIGHT, textWidth } from "./type.ts";

/** Words beside the plot, and the point in it that they speak of. */
export interface SideLabel {
  readonly key: string;
  readonly text: string;
  readonly tail: string;
  readonly tone: Tone;
  /** index of a test's shape, drawn before its name */
  readonly shape: number | null;
  /** [px] */
  readonly from: { readonly x: number; readonly y: number };
}

/** @returns what a label says at that width; null where it isn't written there */
export function sideText(label: SideText | undefined, wide: boolean): { text: string; tail: string } | null {
  if (label === undefined) return null;
  if (typeof label === "string") return wide ? { text: label, tail: "" } : null;
  if (!wide) return label.short === undefined ? null : { text: label.short, tail: "" };
  return { text: label.text, tail: label.tail ?? "" };
}

function lineLabel({ key, label, points, tone }: Line, { at, wide, width, height }: Straight): SideLabel[] {
  const said = sideText(label, wide);
  const end = points.findLast(({ x, y }) => {
    const [px, py] = at(x, y);
    return Number.isFinite(py) && px >= -1 && px <= width + 1;
  });
  if (!said || !end) return [];
  const [x, y] = at(end.x, end.y);
  return [{ key, ...said, tone, shape: null, from: { x, y: Math.min(height, Math.max(0, y)) } }];
}

function levelLabel(
  { key, label, along, at, tone }: Level,
  { y, wide, width, height }: Straight,
): SideLabel[] {
  const said = sideText(label, wide);
  if (!said || along === "y") return [];
  const place = y(at);
  const [text, from] = place < 0 ? [`↑ ${said.text}`, 0] : [said.text, Math.min(height, place)];
  return [{ key, ...said, text, tone, shape: null, from: { x: width, y: from } }];
}

function testLabel(test: ShapeLabel, marks: readonly Mark[], { at }: Straight): SideLabel[] {
  const own = marks.filter((mark) => mark.shape === test.shape && !mark.aside);
  const last = own.reduce<Mark | null>((far, mark) => (far && far.x >= mark.x ? far : mark), null);
  if (!last) return [];
  const [x, y] = at(last.x, last.y);
  return [{ key: test.key, text: test.text, tail: "", tone: last.tone, shape: test.shape, from: { x, y } }];
}

/** @returns what stands at the right edge: each line's name at its end, each level's, each test's at its rightmost reading */
export function sideLabelsOf(plot: Plot, ground: Straight): SideLabel[] {
  if (plot.namedAbove) return [];
  const { lines = [], levels = [], shapes = [], marks = [] } = plot;
  return [
    ...lines.flatMap((line) => lineLabel(line, ground)),
    ...levels.flatMap((level) => levelLabel(level, ground)),
    ...(ground.wide ? shapes.flatMap((test) => testLabel(test, marks, ground)) : []),
  ];
}

/** Leader, glyph before a test's name, and what stays clear at the leader's ends [px]. */
const [LEADER, GLYPH, CLEAR, CLEAR_OF_MARK] = [14, 17, 3, 8];

/** @returns room that the labels of a plot want beside it, from the plot's edge or its right axis on [px] */
export function sideRoom({ lines = [], levels = [], shapes = [] }: Plot, wide: boolean): number {
  const texts = [...lines, ...levels.filter(({ along }) => along === "x")].flatMap(
    ({ label }) => sideText(label, wide)?.text ?? [],
  );
  const widths = [
    ...texts.map((text) => textWidth(text) + ARROW),
    ...(wide ? shapes.map(({ text }) => textWidth(text) + GLYPH) : []),
  ];
  if (widths.length === 0) return 0;
  return Math.ceil((LEADER + CLEAR + Math.max(...widths) + 2) / STEP) * STEP;
}

/** A level beyond the plot has an arrow before its name [px]. */
const ARROW = 14;
/** The room grows in steps, so that a digit more moves no plot [px]. */
const STEP = 16;

interface Side {
  /** of the plot [px] */
  readonly width: number;
  readonly height: number;
  /** where the labels' room begins: right of the plot, and of its right axis where there is one [px] */
  readonly x: number;
  readonly room: number;
}

/** Labels down the right edge, pushed apart, each led by a hairline from what it names. */
export function sideLabels(g: Group, labels: readonly SideLabel[], { width, height, x, room }: Side): void {
  const half = LINE_HEIGHT / 2;
  const wanted = labels.map(({ from }) => ({ at: from.y, size: LINE_HEIGHT }));
  const centres = pushApart(wanted, -half, height + half);
  const placed = labels.map((label, i) => ({ ...label, centre: centres[i] }));
  type Placed = (typeof placed)[number];
  const left = x + LEADER;
  const inset = (label: Placed) => CLEAR + (label.shape === null ? 0 : GLYPH);
  g.selectAll<SVGPathElement, Placed>(".leader")
    .data(placed, ({ key }) => key)
    .join("path")
    .put("class", "leader")
    .put("d", ({ from, shape, centre }) => {
      const clear = shape === null ? CLEAR : CLEAR_OF_MARK;
      const start = from.x >= width - 1 ? x : Math.min(from.x + clear, x);
      return `M${start},${from.y}L${left},${centre}`;
    });
  g.selectAll<SVGPathElement, Placed>(".chart-mark")
    .data(
      placed.filter(({ shape }) => shape !== null),
      ({ key }) => key,
    )
    .join("path")
    .put("class", ({ tone }) => `chart-mark tone-${tone}`)
    .put("d", ({ shape, centre }) => `M${left + GLYPH / 2},${centre}${shapePath(shape ?? 0)}`);
  g.selectAll<SVGTextElement, Placed>("text")
    .data(placed, ({ key }) => key)
    .join("text")
    .put("class", ({ tone }) => `chart-label tone-${tone}`)
    .put("x", (label) => left + inset(label))
    .put("y", ({ centre }) => centre + BASELINE)
    .say((label) => clippedText(label.text, label.tail, room - LEADER - inset(label)));
}
