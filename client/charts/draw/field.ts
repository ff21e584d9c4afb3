import { type ContourMultiPolygon, contours } from "d3";
import type { Field } from "../model/field.ts";
import type { Group } from "./frame.ts";
import { type At, tenths } from "./path.ts";

type Ring = readonly (readonly [x: number, y: number])[];

/** Where a quantity is above one of its steps. */
export interface Contour {
  readonly step: number;
  /** as its line is named */
  readonly words: string;
  /** closed outlines in the plot, holes among them [px] */
  readonly rings: readonly Ring[];
}

/** A contour's rings in the plot: the grid's outermost values lie on the field's edges. */
function ringsOf({ coordinates }: ContourMultiPolygon, { columns, rows, x, y }: Field, at: At): Ring[] {
  const [left, bottom] = at(x[0], y[0]);
  const [right, top] = at(x[1], y[1]);
  // d3 has a value in the middle of its cell, half a cell inside the grid's edge
  const across = (column: number) => left + ((column - 0.5) / (columns - 1)) * (right - left);
  const up = (row: number) => bottom + ((row - 0.5) / (rows - 1)) * (top - bottom);
  return coordinates.flat().map((ring) => ring.map(([a, b]): [number, number] => [across(a), up(b)]));
}

/** @returns for each step where the quantity is above it; a value that isn't finite is above none */
export function contoursOf(field: Field, at: At): Contour[] {
  const { columns, rows, values, steps } = field;
  const maker = contours()
    .size([columns, rows])
    .thresholds([...steps]);
  return maker(Array.from(values)).map((each) => ({
    step: each.value,
    words: field.words(each.value),
    rings: ringsOf(each, field, at),
  }));
}

const pathOf = ({ rings }: Contour) =>
  rings.map((ring) => `M${ring.map(([x, y]) => `${tenths(x)},${tenths(y)}`).join("L")}Z`).join("");

/** Share of the tone over the paper above the last step [-]. */
const DARKEST = 0.5;

/** Tints that grow evenly from step to step, each bounded by its contour line. */
export function field(g: Group, drawn: readonly Contour[]): void {
  const share = (i: number) => (DARKEST * i) / Math.max(1, drawn.length);
  g.selectAll<SVGPathElement, Contour>("path")
    .data(drawn, ({ step }) => step)
    .join("path")
    .put("class", "chart-field")
    // tints lie on one another: each adds what is left to its own share
    .put("fill-opacity", (_, i) => (share(i + 1) - share(i)) / (1 - share(i)))
    .put("d", pathOf);
}
