import { formatShort } from "../../../../shared/units/format.ts";
import { axisOver } from "../../../charts/model/axis.ts";
import type { Axis, Level, Line, Mark, Plot, Ring, ShapeLabel } from "../../../charts/model/plot.ts";
import { letterAt } from "../../compare/letterAt.ts";
import { type ColumnSpec, isMargin } from "../columns.ts";
import { frontPoints, frontSteps, isAdmissible, isOnFront, isOpenPoint, type PlotPoint } from "./front.ts";
import type { Marked, Picture } from "./picture.ts";

/** What is marked by itself, beside the points. */
export interface MarkedCombinations {
  readonly pinned: readonly Marked[];
  readonly looked: Marked | null;
}

/** Symbols of the points: a dot works, a triangle with an open propeller works, a small cross doesn't, a diamond is a best trade-off. */
const [DIAMOND, TRIANGLE, CROSS, DOT] = [1, 2, 4, 5];
/** A margin's axis reaches from 0 to so much above the greatest value, or what is wanted. */
const ABOVE = 1.04;

/** @returns the axis over a column's values; a margin's reaches down to 0 and up to what is wanted */
export function axisFor(column: ColumnSpec, values: readonly number[], target: number): Axis {
  if (!isMargin(column.key)) return axisOver(column.axis, values);
  const most = values.reduce((highest, value) => Math.max(highest, value), target);
  return { label: column.axis, from: 0, to: most * ABOVE };
}

function markOf(point: PlotPoint): Mark {
  const [index, x, y] = point;
  const works = isAdmissible(point);
  const working = isOpenPoint(point) ? TRIANGLE : DOT;
  return {
    key: String(index),
    x,
    y,
    shape: isOnFront(point) ? DIAMOND : works ? working : CROSS,
    small: !isOnFront(point),
    tone: isOnFront(point) ? "ink" : works ? "rotor" : "quiet",
    aside: false,
    outlier: false,
  };
}

/** The best trade-offs are drawn last, over the others. */
const byWeight = (a: PlotPoint, b: PlotPoint) => weightOf(a) - weightOf(b);
const weightOf = (point: PlotPoint) => (isOnFront(point) ? 2 : isAdmissible(point) ? 1 : 0);

/** The pinned ones with their letters, and the one that is looked at. */
function ringsOf({ x, y }: Picture, { pinned, looked }: MarkedCombinations): Ring[] {
  const at = (marked: Marked, letter: string | null): Ring[] => {
    if (marked.x === null || marked.y === null) return [];
    const look = marked.index === looked?.index ? "chosen" : "before";
    const name = letter === null ? undefined : { lines: [letter] };
    return [{ key: String(marked.index), x: x.shown(marked.x), y: y.shown(marked.y), look, name }];
  };
  const others = looked && !pinned.some(({ index }) => index === looked.index) ? [looked] : [];
  return [...others.flatMap((each) => at(each, null)), ...pinned.flatMap((each, i) => at(each, letterAt(i)))];
}

function targetOf({ x, y, target }: Picture): Level[] {
  const along = isMargin(y.key) ? "x" : isMargin(x.key) ? "y" : null;
  if (along === null) return [];
  const times = `${formatShort(target, 2)}\u202f×`;
  const text = `${times} wanted`;
  return [
    {
      key: "target",
      along,
      at: target,
      tone: "needed",
      style: "dots",
      label: { text, short: times },
    },
  ];
}

const plainlyWorks = (point: PlotPoint) => isAdmissible(point) && !isOnFront(point);

function shapesOf({ points }: Picture): ShapeLabel[] {
  const all: readonly (ShapeLabel & { readonly has: (point: PlotPoint) => boolean })[] = [
    { key: "best", shape: DIAMOND, text: "best trade-off", has: isOnFront },
    { key: "works", shape: DOT, text: "works", has: (point) => plainlyWorks(point) && !isOpenPoint(point) },
    {
      key: "open",
      shape: TRIANGLE,
      text: "works, open propeller",
      has: (point) => plainlyWorks(point) && isOpenPoint(point),
    },
    { key: "out", shape: CROSS, text: "does not", has: (point) => !isAdmissible(point) },
  ];
  return all.filter(({ has }) => points.some(has)).map(({ key, shape, text }) => ({ key, shape, text }));
}

/** Two columns of the combinations against each other, and the edge of what can be had. */
export function choosePlot(picture: Picture, marked: MarkedCombinations): Plot {
  const { x, y, points, target } = picture;
  const edge: Line = {
    key: "front",
    tone: "ink",
    style: "solid",
    weight: "fine",
    points: frontSteps(points, x).map(([a, b]) => ({ x: a, y: b })),
  };
  return {
    x: axisFor(
      x,
      points.map(([, a]) => a),
      target,
    ),
    y: axisFor(
      y,
      points.map(([, , b]) => b),
      target,
    ),
    lines: frontPoints(points).length > 1 ? [edge] : [],
    levels: targetOf(picture),
    marks: [...points].sort(byWeight).map(markOf),
    shapes: shapesOf(picture),
    rings: ringsOf(picture, marked),
  };
}
