import { scaleLinear } from "d3";
import { axisBottom, axisSide, type Scale } from "../../../charts/axes.ts";
import { chartFrame, type Frame } from "../../../charts/frame.ts";
import { isMargin } from "../columns.ts";
import { letterOf } from "../words/set.ts";
import { frontPoints, frontSteps, isAdmissible, type PlotPoint } from "./front.ts";
import type { Spot } from "./neighbour.ts";
import { axisEnds, type Marked, type Picture } from "./picture.ts";

const MARGIN = { top: 30, right: 16, bottom: 46, left: 52 };
/** Room for what is wanted, written at its line's end. */
const WANTED_ROOM = 92;
const DOT = 2.5;
const CROSS = 2.4;
const FRONT = 4.6;
const LOOKED = 9;

export interface Drawing {
  readonly picture: Picture;
  readonly pinned: readonly Marked[];
  readonly looked: Marked | null;
}

interface Context {
  readonly frame: Frame;
  readonly x: Scale;
  readonly y: Scale;
  readonly picture: Picture;
}

/** A place to a tenth of a pixel. */
const at = (value: number) => Math.round(value * 10) / 10;

const dot = (x: number, y: number, r = DOT) =>
  `M${at(x - r)},${at(y)}a${r},${r} 0 1,0 ${2 * r},0a${r},${r} 0 1,0 ${-2 * r},0`;
const cross = (x: number, y: number) =>
  `M${at(x - CROSS)},${at(y - CROSS)}l${2 * CROSS},${2 * CROSS}m0,${-2 * CROSS}l${-2 * CROSS},${2 * CROSS}`;
const diamond = (x: number, y: number) =>
  `M${at(x)},${at(y - FRONT)}l${FRONT},${FRONT}l${-FRONT},${FRONT}l${-FRONT},${-FRONT}Z`;

/** One path for all points of a class: thousands of them cost one element. */
function pathOf(
  { x, y }: Context,
  points: readonly PlotPoint[],
  shape: (x: number, y: number) => string,
): string {
  let path = "";
  for (const point of points) path += shape(x(point[1]), y(point[2]));
  return path;
}

interface Line {
  readonly name: string;
  readonly path: string;
}

function drawPoints(context: Context): void {
  const { frame, picture } = context;
  const others = picture.points.filter((point) => !isAdmissible(point));
  const admissible = picture.points.filter(isAdmissible);
  const { x, y } = context;
  const steps = frontSteps(picture.points, picture.x)
    .map(([a, b], i) => `${i === 0 ? "M" : "L"}${at(x(a))},${at(y(b))}`)
    .join("");
  const lines: Line[] = [
    { name: "choose-others", path: pathOf(context, others, cross) },
    { name: "choose-admissible", path: pathOf(context, admissible, (a, b) => dot(a, b)) },
    { name: "choose-front-line", path: steps },
    { name: "choose-front", path: pathOf(context, frontPoints(picture.points), diamond) },
  ];
  frame
    .layer("points")
    .selectAll<SVGPathElement, Line>("path")
    .data(lines, ({ name }) => name)
    .join("path")
    .attr("class", ({ name }) => name)
    .attr("d", ({ path }) => path);
}

const LABEL_GAP = 5;
const BASELINE = 4;

/** The margin that is wanted, across the plot or up it. */
function drawTarget({ frame, x, y, picture }: Context): void {
  const { target } = picture;
  const up = isMargin(picture.y.key);
  const across = !up && isMargin(picture.x.key);
  const g = frame.layer("target");
  const drawn = up || across ? [target] : [];
  g.selectAll<SVGLineElement, number>("line")
    .data(drawn)
    .join("line")
    .attr("class", "needed-line")
    .attr("x1", (value) => (up ? 0 : x(value)))
    .attr("x2", (value) => (up ? frame.width : x(value)))
    .attr("y1", (value) => (up ? y(value) : 0))
    .attr("y2", (value) => (up ? y(value) : frame.height));
  g.selectAll<SVGTextElement, number>("text")
    .data(drawn)
    .join("text")
    .attr("class", "needed-text halo")
    .attr("text-anchor", "start")
    .attr("x", (value) => (up ? frame.width + LABEL_GAP : x(value) + LABEL_GAP))
    .attr("y", (value) => (up ? y(value) + BASELINE : -BASELINE))
    .text((value) => `${value}\u2009× wanted`);
}

interface Placed {
  readonly index: number;
  readonly letter: string;
  readonly x: number;
  readonly y: number;
}

function placed({ frame, x, y, picture }: Context, marked: Marked, letter: string): Placed[] {
  if (marked.x === null || marked.y === null) return [];
  const [a, b] = [x(picture.x.shown(marked.x)), y(picture.y.shown(marked.y))];
  const inside = a >= 0 && a <= frame.width && b >= 0 && b <= frame.height;
  return inside ? [{ index: marked.index, letter, x: a, y: b }] : [];
}

const LETTER_OFF = 9;
const LETTER_LIFT = 8;
const CROWDED = 14;

/** Letters of sets that lie close together stand side by side. */
function spread(pins: readonly Placed[]): readonly (Placed & { readonly shift: number })[] {
  return pins.map((pin, i) => {
    const before = pins.slice(0, i);
    const near = before.filter((other) => Math.hypot(other.x - pin.x, other.y - pin.y) < CROWDED);
    return { ...pin, shift: near.length * CROWDED };
  });
}

function drawMarked(context: Context, { pinned, looked }: Drawing): void {
  const g = context.frame.layer("marked");
  const rings = looked ? placed(context, looked, "") : [];
  g.selectAll<SVGCircleElement, Placed>("circle")
    .data(rings)
    .join("circle")
    .attr("class", "choose-looked")
    .attr("r", LOOKED)
    .attr("cx", (spot) => spot.x)
    .attr("cy", (spot) => spot.y);
  const pins = spread(pinned.flatMap((each, i) => placed(context, each, letterOf(i))));
  g.selectAll<SVGPathElement, Placed>("path")
    .data(pins, (pin) => pin.index)
    .join("path")
    .attr("class", "choose-pin")
    .attr("d", (pin) => dot(pin.x, pin.y, 4));
  g.selectAll<SVGTextElement, (typeof pins)[number]>("text")
    .data(pins, (pin) => pin.index)
    .join("text")
    .attr("class", "strong-text halo")
    .attr("x", (pin) => pin.x + LETTER_OFF + pin.shift)
    .attr("y", (pin) => pin.y - LETTER_LIFT)
    .text((pin) => pin.letter);
}

/** @returns height of the plot at a width [px] */
export function plotHeight(width: number): number {
  return Math.round(Math.min(440, Math.max(300, width * 0.6)));
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** What was drawn last. */
export interface Drawn {
  readonly size: Size;
  readonly context: Context;
  /** where each point stands, for whoever reads them */
  readonly spots: readonly Spot[];
}

const isSame = (a: Size, b: Size) => a.width === b.width && a.height === b.height;

/** Draws the plot; where neither points nor size have changed since, only the marked sets. @returns what was drawn */
export function drawSets(svg: SVGSVGElement, size: Size, drawing: Drawing, before: Drawn | null): Drawn {
  const { picture } = drawing;
  if (before && picture === before.context.picture && isSame(size, before.size)) {
    drawMarked(before.context, drawing);
    return before;
  }
  const right = isMargin(picture.y.key) ? WANTED_ROOM : MARGIN.right;
  const frame = chartFrame(svg, { ...size, margin: { ...MARGIN, right } });
  const ends = (axis: 1 | 2) =>
    axisEnds(
      picture.points.map((point) => point[axis]),
      axis === 1 ? picture.x : picture.y,
      picture.target,
    );
  const x = scaleLinear(ends(1), frame.rangeX);
  const y = scaleLinear(ends(2), frame.rangeY);
  const context = { frame, x, y, picture };
  axisSide(frame, y, { label: picture.y.axis, side: "left", grid: true });
  axisBottom(frame, x, { label: picture.x.axis });
  drawPoints(context);
  drawTarget(context);
  drawMarked(context, drawing);
  const spots = picture.points.map(([index, a, b]) => ({
    index,
    x: x(a) + MARGIN.left,
    y: y(b) + MARGIN.top,
  }));
  return { size, context, spots };
}
