import { type ContourMultiPolygon, contours } from "d3";
import type { Contour, ContourRing, Field } from "../model/field.ts";
import type { At } from "./path.ts";

/** A contour's rings in the plot: the grid's outermost values lie on the field's edges. */
function ringsOf(
  { coordinates }: ContourMultiPolygon,
  { columns, rows, x, y }: Field,
  at: At,
): ContourRing[] {
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
