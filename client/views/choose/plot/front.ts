import type { PointsAnswer } from "../answers.ts";
import type { ColumnSpec } from "../columns.ts";

export type PlotPoint = PointsAnswer["points"][number];

const ADMISSIBLE = 1;
const ON_FRONT = 2;
const OPEN = 4;

export const isAdmissible = ([, , , what]: PlotPoint): boolean => (what & ADMISSIBLE) !== 0;
export const isOnFront = ([, , , what]: PlotPoint): boolean => (what & ON_FRONT) !== 0;
export const isOpenPoint = ([, , , what]: PlotPoint): boolean => (what & OPEN) !== 0;

/** @returns the non-dominated points by rising x, those that stand in one place once */
export function frontPoints(points: readonly PlotPoint[]): PlotPoint[] {
  const front = points.filter(isOnFront).sort((a, b) => a[1] - b[1] || a[2] - b[2]);
  return front.filter((point, i) => i === 0 || point[1] !== front[i - 1][1] || point[2] !== front[i - 1][2]);
}

/**
 * The edge of what can be had: a line of steps along the non-dominated points.
 *
 * @param x - column along; where less of it is wanted, a step goes along first, else up or down first
 * @returns corners in the values' own unit
 */
export function frontSteps(points: readonly PlotPoint[], x: Pick<ColumnSpec, "want">): [number, number][] {
  const corners: [number, number][] = [];
  let before: PlotPoint | null = null;
  for (const point of frontPoints(points)) {
    if (before) corners.push(x.want === "least" ? [point[1], before[2]] : [before[1], point[2]]);
    corners.push([point[1], point[2]]);
    before = point;
  }
  return corners;
}
