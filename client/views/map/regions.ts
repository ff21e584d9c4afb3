import { contours } from "d3";
import type { MapQuestion } from "../../../shared/decide/map/grid.ts";
import type { MapField } from "../../../shared/decide/map/solve.ts";
import type { Point, Region, Tone } from "../../charts/model/plot.ts";

/** What a part of the map comes to, worst first. */
export const STOPS = ["bursts", "burns", "falls", "tight"] as const;
export type StopKind = (typeof STOPS)[number];

const TONES: Readonly<Record<StopKind, Tone>> = { bursts: "bad", burns: "bad", falls: "ink", tight: "quiet" };
/** Below any threshold: nothing is known there, so nothing is said. */
const UNKNOWN = -1e3;
/** A part this narrow has no room for its name [cells]. */
const NARROW = 4;
/** Half of the spot that carries a name [cells]. */
const SPOT = 0.25;

type Ring = readonly (readonly [number, number])[];

/** How far inside a region each point lies; its edge is where this is 0. */
export function insideOf(
  field: MapField,
  { of: { target, windingLimit } }: Pick<MapQuestion, "of">,
  kind: StopKind,
): Float64Array {
  const known = (value: number) => (Number.isFinite(value) ? value : UNKNOWN);
  return Float64Array.from(field.margin, (margin, i) => {
    if (kind === "bursts") return known(1 - field.burst[i]);
    if (kind === "burns") return known(field.winding[i] / windingLimit - 1);
    return known(kind === "falls" ? 1 - margin : Math.min(margin - 1, target - margin));
  });
}

/** A polygon with its holes as one outline: out to each hole and back on the same line, which hatching doesn't show. */
function keyholed([outer, ...holes]: readonly Ring[]): Ring {
  return [...outer, ...holes.flatMap((hole) => [...hole, outer[0]])];
}

/**
 * The parts of a map where something stops the build, as the chart hatches and names them.
 *
 * @param field - the map [SI]
 * @param question - its axes, the margin wanted [-], the winding's limit [K]
 * @param at - from column and row to the chart's axes
 * @returns regions, named where they are large enough
 */
export function regionsOf(
  field: MapField,
  question: Pick<MapQuestion, "of">,
  at: (column: number, row: number) => Point,
): Region[] {
  const { columns, rows } = field;
  return STOPS.flatMap((kind) => {
    const [{ coordinates }] = contours().size([columns, rows]).thresholds([0])(
      Array.from(insideOf(field, question, kind)),
    );
    return coordinates.map((polygon, i): Region => {
      const rings = polygon as unknown as readonly Ring[];
      const outline = keyholed(rings).map(([x, y]) => at(x - 0.5, y - 0.5));
      return { key: `${kind} ${i}`, tone: TONES[kind], outline };
    });
  });
}

/** The cell that lies deepest inside a part, and how many cells its edge is away; the map's own edge counts. */
function deepest(inside: Float64Array, columns: number, rows: number) {
  const depth = new Int16Array(inside.length);
  const near = (cell: number, column: number, row: number, step: 1 | -1) => {
    if (!(inside[cell] > 0)) return 0;
    const edge = step > 0 ? column === 0 || row === 0 : column === columns - 1 || row === rows - 1;
    const before = edge
      ? 0
      : Math.min(depth[cell - step], depth[cell - step * columns], depth[cell - step * (columns + 1)]);
    return before + 1;
  };
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const cell = row * columns + column;
      depth[cell] = near(cell, column, row, 1);
    }
  let best = { column: 0, row: 0, depth: 0 };
  for (let row = rows - 1; row >= 0; row--)
    for (let column = columns - 1; column >= 0; column--) {
      const cell = row * columns + column;
      depth[cell] = Math.min(depth[cell], near(cell, column, row, -1));
      if (depth[cell] > best.depth) best = { column, row, depth: depth[cell] };
    }
  return best;
}

/**
 * Spots that carry the names of what stops the build, each deepest inside its part and outside of a worse one.
 *
 * @param field - the map [SI]
 * @param question - the margin wanted [-], the winding's limit [K]
 * @param at - from column and row to the chart's axes
 * @returns a named spot for each part with room for it
 */
export function namesOf(
  field: MapField,
  question: Pick<MapQuestion, "of">,
  at: (column: number, row: number) => Point,
): Region[] {
  const { columns, rows } = field;
  const worse = new Uint8Array(columns * rows);
  return STOPS.flatMap((kind) => {
    const inside = insideOf(field, question, kind).map((value, i) => (worse[i] ? UNKNOWN : value));
    inside.forEach((value, i) => {
      if (value > 0) worse[i] = 1;
    });
    const { column, row, depth } = deepest(inside, columns, rows);
    if (depth < Math.min(NARROW, columns / 10)) return [];
    const corners = [
      [-SPOT, -SPOT],
      [SPOT, -SPOT],
      [SPOT, SPOT],
      [-SPOT, SPOT],
    ] as const;
    const outline = corners.map(([dx, dy]) => at(column + dx, row + dy));
    return [{ key: `${kind} name`, tone: TONES[kind], outline, name: { lines: [kind] } }];
  });
}
