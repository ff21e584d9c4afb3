import type { Plot, Strip } from "../model/plot.ts";
import { axisBottom, axisSide, noAxis } from "./axes.ts";
import { lines, ribbons, spreads } from "./curves.ts";
import { field } from "./field.ts";
import { chartFrame, drawOnce, type Frame } from "./frame.ts";
import { type Layout, stripName } from "./layout.ts";
import { levels } from "./levels.ts";
import { brackets, marks } from "./marks.ts";
import { names } from "./names.ts";
import { ribbonOf } from "./path.ts";
import type { Obstacle } from "./place.ts";
import { regions } from "./regions.ts";
import { rings } from "./rings.ts";
import { scaleOf } from "./scales.ts";
import { sideLabels, sideLabelsOf } from "./sideLabels.ts";
import { BASELINE } from "./type.ts";

/** Plots lower than this get their ticks closer together [px]. */
const LOW = 200;
const LOW_SPACING = 25;
const STRIP_GAP = 10;

function strips(frame: Frame, all: readonly Strip[], { y, margin }: Layout): void {
  frame
    .layer("strips")
    .put("aria-hidden", "true")
    .selectAll<SVGTextElement, Strip>("text")
    .data(all)
    .join("text")
    .put("class", "tick-text")
    .put("text-anchor", "end")
    .put("x", -STRIP_GAP)
    .put("y", (_, i) => y(i) + BASELINE)
    .say((strip) => stripName(strip, margin.left - STRIP_GAP - 4));
}

function axes(frame: Frame, plot: Plot, layout: Layout, named: boolean): void {
  const { x, y, right, strips: rows } = plot;
  const spacing = frame.height < LOW ? LOW_SPACING : undefined;
  if (rows) strips(frame, rows, layout);
  else
    drawOnce(frame.layer("axis-left"), [layout, y.label], () =>
      axisSide(frame, y, layout.y, { side: "left", grid: true, spacing }),
    );
  drawOnce(frame.layer("axis-bottom"), [layout, x.label, rows, named], () =>
    axisBottom(frame, x, layout.x, { grid: rows !== undefined, named }),
  );
  drawOnce(frame.layer("axis-right"), [layout, right?.label, right?.from, right?.to], () =>
    right
      ? axisSide(frame, right, scaleOf(right, frame.rangeY), { side: "right", spacing })
      : noAxis(frame, "right"),
  );
}

/** Levels as points that names keep off. */
function alongLevels({ levels: all = [] }: Plot, { x, y, width, height }: Layout): Obstacle[] {
  return all.flatMap(({ along, at }) =>
    [0.05, 0.25, 0.5, 0.75, 0.95].map(
      (share): Obstacle => (along === "x" ? [share * width, y(at)] : [x(at), share * height]),
    ),
  );
}

/**
 * Draws a plot; called again it follows data and size.
 *
 * @param root - the drawing, or a group in it
 * @param named - false: the x axis is named under another plot
 */
export function drawPlot(root: SVGSVGElement | SVGGElement, plot: Plot, layout: Layout, named = true): void {
  const frame = chartFrame(root, { ...layout.size, margin: layout.margin });
  const layer = (name: string) => frame.layer(name, { clipped: true });
  axes(frame, plot, layout, named);
  const contours = plot.field?.contoursOf(plot.field, layout.at) ?? [];
  field(layer("field"), contours);
  regions(layer("regions"), plot.regions ?? [], layout);
  ribbons(layer("bands"), [...(plot.ribbons ?? []), ...(plot.bands ?? []).map(ribbonOf)], layout);
  levels(frame.layer("levels"), plot.levels ?? [], layout);
  lines(layer("lines"), plot.lines ?? [], layout);
  brackets(layer("brackets"), plot.brackets ?? [], layout);
  spreads(layer("spreads"), plot.spreads ?? [], layout);
  drawOnce(frame.layer("marks"), [layout, plot.marks], (g) => marks(g, plot.marks ?? [], layout));
  rings(frame.layer("rings"), plot.rings ?? [], layout);
  sideLabels(frame.layer("labels"), sideLabelsOf(plot, layout), { ...layout, ...layout.side });
  names(frame.layer("names"), plot, layout, { contours, obstacles: alongLevels(plot, layout) });
}
