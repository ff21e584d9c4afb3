import { select } from "d3";
import type { Margin } from "./draw/frame.ts";
import { type Layout, layoutOf, marginOf } from "./draw/layout.ts";
import { drawPlot } from "./draw/plot.ts";
import type { Plot } from "./model/plot.ts";
import { countOf, once, type Picture, spotsOf, upright } from "./picture.ts";
import { inOrder, nearestAlong } from "./read/spots.ts";
import type { ChartSize } from "./size.ts";

/** One of several plots above one another over the same x axis, which the last one names. */
export interface Panel {
  readonly key: string;
  readonly plot: Plot;
  /** of the plot's part of the drawing, its numbers included [px] */
  readonly height: (width: number) => number;
}

/** Below a plot whose axis is named further down, and above every plot [px]. */
const [NUMBERS_ALONE, TOP] = [30, 34];

interface Placed {
  readonly panel: Panel;
  readonly layout: Layout;
  readonly y: number;
  readonly last: boolean;
}

function placed(panels: readonly Panel[], width: number): Placed[] {
  const margins = panels.map(({ plot }) => marginOf(plot, width));
  const right = Math.max(...margins.map((margin) => margin.right));
  let y = 0;
  return panels.map((panel, i) => {
    const last = i === panels.length - 1;
    const margin: Margin = {
      ...margins[i],
      top: TOP,
      right,
      bottom: last ? margins[i].bottom : NUMBERS_ALONE,
    };
    const height = panel.height(width);
    const part = { panel, layout: layoutOf(panel.plot, { width, height }, margin), y, last };
    y += height;
    return part;
  });
}

/** @returns height of a stack of that width [px] */
export const stackHeight = (panels: readonly Panel[]) => (width: number) =>
  panels.reduce((sum, { height }) => sum + height(width), 0);

function drawStack(svg: SVGSVGElement, parts: readonly Placed[], { width, height }: ChartSize): void {
  const groups = select(svg)
    .attr("width", width)
    .attr("height", height)
    .selectAll<SVGGElement, Placed>(":scope > g.panel")
    .data(parts, ({ panel }) => panel.key)
    .join("g")
    .attr("class", "panel")
    .attr("transform", ({ y }) => `translate(0,${y})`);
  groups.each(function ({ panel, layout, last }) {
    drawPlot(this, panel.plot, layout, last);
  });
}

/** Plots above one another over one x axis, read along it; its stops are those of the first. */
export function stackPicture(panels: readonly Panel[]): Picture {
  return (size) => {
    const parts = placed(panels, size.width);
    const spots = once(() =>
      inOrder(parts.slice(0, 1).flatMap(({ panel, layout }) => spotsOf(panel.plot, layout))),
    );
    const end = parts[parts.length - 1];
    return {
      draw: (svg) => drawStack(svg, parts, size),
      count: panels.slice(0, 1).reduce((sum, { plot }) => sum + countOf(plot), 0),
      layout: null,
      spots,
      under: (at) => nearestAlong(spots(), at),
      hairline: upright(TOP, end.y + TOP + end.layout.height),
    };
  };
}
