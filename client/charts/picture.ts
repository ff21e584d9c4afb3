import { type Layout, layoutOf } from "./draw/layout.ts";
import { drawPlot } from "./draw/plot.ts";
import type { Bracket, Plot, Point } from "./model/plot.ts";
import { inOrder, nearestAlong, nearestSpot, type Spot } from "./read/spots.ts";
import type { ChartSize } from "./size.ts";

/** A picture at a size: how it is drawn, and where it can be read. */
export interface Drawn {
  readonly draw: (svg: SVGSVGElement) => void;
  /** places that can be read */
  readonly count: number;
  /** in the order in which the arrow keys go through them */
  readonly spots: () => readonly Spot[];
  /** rows stand below one another: up and down go through them as left and right do */
  readonly order?: "rows";
  /** the spot that a pointer means; `reach` is how near it must come [px] */
  readonly under: (at: Point, reach: number) => Spot | null;
  /** a hairline through the spot that is read [px]; null: a ring alone */
  readonly hairline: ((spot: Spot) => Hairline) | null;
  /** where the plot lies and what its axes mean, for zooming; null: it can't be zoomed */
  readonly layout: Layout | null;
}

/** A straight line over the drawing [px]. */
export interface Hairline {
  readonly from: Point;
  readonly to: Point;
}

export type Picture = (size: ChartSize) => Drawn;

/** How a chart is read: point by point, or along its x axis as by a ruler. */
export type Reads = "points" | "along";

const middleOf = ({ lo, hi }: Bracket) => (hi === null ? lo : (lo + hi) / 2);

/** @returns where a plot can be read [px], as its layout puts it into the drawing; `down` below the drawing's top */
export function spotsOf(plot: Plot, { at, shows, margin }: Layout, down = 0): Spot[] {
  const places = [
    ...(plot.stops ?? []),
    ...(plot.rings ?? []),
    ...(plot.marks ?? []),
    ...(plot.brackets ?? []).map((bracket) => {
      const [x, y] =
        bracket.along === "y" ? [bracket.at, middleOf(bracket)] : [middleOf(bracket), bracket.at];
      return { key: bracket.key, x, y };
    }),
  ];
  const seen = new Set<string>();
  return places.flatMap(({ key, x, y }) => {
    const [px, py] = at(x, y);
    if (seen.has(key) || !shows(px, py)) return [];
    seen.add(key);
    return [{ key, x: px + margin.left, y: py + margin.top + down }];
  });
}

/** @returns how many places of a plot can be read */
export function countOf({ stops = [], rings = [], marks = [], brackets = [] }: Plot): number {
  return stops.length + rings.length + marks.length + brackets.length;
}

/** @returns a value worked out when it is first asked for */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** @returns an upright hairline through whatever is read, between two heights of the drawing [px] */
export const upright =
  (top: number, bottom: number) =>
  ({ x }: Spot): Hairline => ({ from: { x, y: top }, to: { x, y: bottom } });

/** A chart on straight axes. */
export function plotPicture(plot: Plot, reads: Reads = "points"): Picture {
  return (size) => {
    const layout = layoutOf(plot, size);
    const spots = once(() => inOrder(spotsOf(plot, layout)));
    const { top } = layout.margin;
    return {
      draw: (svg) => drawPlot(svg, plot, layout),
      count: countOf(plot),
      layout,
      spots,
      under: (at, reach) => (reads === "along" ? nearestAlong(spots(), at) : nearestSpot(spots(), at, reach)),
      hairline: reads === "along" ? upright(top, top + layout.height) : null,
    };
  };
}
