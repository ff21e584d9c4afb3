import { keptOn } from "../kept.ts";
import type { Band, Point, Ribbon } from "../model/plot.ts";

/** Where a point of the data lies in the plot [px]. */
export type At = (x: number, y: number) => readonly [number, number];

/** @returns a length to a tenth of a pixel: finer than a screen shows, and short to read */
export const tenths = (pixels: number): number => Math.round(10 * pixels) / 10;

function pathThrough(points: readonly Point[], at: At): string {
  let path = "";
  let open = false;
  for (const point of points) {
    const [x, y] = at(point.x, point.y);
    const drawn = Number.isFinite(x) && Number.isFinite(y);
    if (drawn) path += `${open ? "L" : "M"}${tenths(x)},${tenths(y)}`;
    open = drawn;
  }
  return path;
}

/** @returns the path through points; one that is not finite breaks it */
export const linePath: (points: readonly Point[], at: At) => string = keptOn(pathThrough);

const isFinitePoint = ({ x, y }: Point) => Number.isFinite(x) && Number.isFinite(y);

/** @returns the closed path of an outline */
export function outlinePath(points: readonly Point[], at: At): string {
  return points.length > 2 ? `${pathThrough(points, at)}Z` : "";
}

/** @returns a band as a ribbon: its lower edge and its upper one */
export function ribbonOf({ points, ...rest }: Band): Ribbon {
  return {
    ...rest,
    edges: points.map(({ x, lo, hi }) => [
      { x, y: lo },
      { x, y: hi },
    ]),
  };
}

function pathBetween(edges: Ribbon["edges"], at: At): string {
  const stretches: (readonly [Point, Point])[][] = [[]];
  for (const pair of edges) {
    if (pair.every(isFinitePoint)) stretches[stretches.length - 1].push(pair);
    else stretches.push([]);
  }
  return stretches
    .map((pairs) =>
      outlinePath([...pairs.map(([one]) => one), ...pairs.toReversed().map(([, other]) => other)], at),
    )
    .join("");
}

const ribbonOfEdges = keptOn(pathBetween);

/** @returns the closed paths of a ribbon, one for each stretch without a break */
export const ribbonPath = ({ edges }: Pick<Ribbon, "edges">, at: At): string => ribbonOfEdges(edges, at);
