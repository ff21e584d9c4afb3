import type { ChartSize } from "./Chart.tsx";
import { type Layout, layoutOf } from "./draw/layout.ts";
import { drawPlot } from "./draw/plot.ts";
import type { Bracket, Plot, Point } from "./model/plot.ts";
import { inOrder, nearestAlong, nearestSpot, type Spot } from "./read/spots.ts";

/** A picture at a size: how it is drawn, and where it can be read. */
export interface Drawn {
  readonly draw: (svg: SVGSVGElement) => void;
  /** places that can be read */
  readonly count: number;
  /** in the order in which the arrow keys go through them */
  readonly spots: () => readonly Spot[];
  /** the spot that a pointer means; `reach` is how near it must come [px] */
  readonly under: (at: Point, reach: number) => Spot | null;
  /** a hairline through the spot that is read, from top to bottom [px]; null: a ring alone */
  readonly hairline: { readonly top: number; readonly bottom: number } | null;
  /** where the plot lies and what its axes mean, for zooming; null: it can't be zoomed */
  readonly layout: Layout | null;
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
  return places.flatMap(({ key, x, y }) => {
    const [px, py] = at(x, y);
    return shows(px, py) ? [{ key, x: px + margin.left, y: py + margin.top + down }] : [];
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
      hairline: reads === "along" ? { top, bottom: top + layout.height } : null,
    };
  };
}
