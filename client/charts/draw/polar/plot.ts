import type { PolarPlot } from "../../model/polar.ts";
import { lines, ribbons } from "../curves.ts";
import { chartFrame } from "../frame.ts";
import { names } from "../names.ts";
import type { Obstacle } from "../place.ts";
import { rings } from "../rings.ts";
import { polarAxis } from "./axis.ts";
import type { PolarLayout } from "./layout.ts";
import { sectors, spokes } from "./rim.ts";
import { rimNames } from "./rimNames.ts";

/** Points of a spoke that names keep off. */
const ON_SPOKE = 30;

/** Draws a polar plot; called again it follows data and size. */
export function drawPolar(root: SVGSVGElement, plot: PolarPlot, layout: PolarLayout): void {
  const frame = chartFrame(root, { ...layout.size, margin: layout.margin });
  polarAxis(frame.layer("ground"), plot, layout);
  spokes(frame.layer("spokes"), plot.spokes, layout);
  ribbons(frame.layer("bands"), plot.ribbons ?? [], layout);
  lines(frame.layer("lines"), plot.lines ?? [], layout);
  rings(frame.layer("rings"), plot.rings ?? [], layout);
  sectors(frame.layer("sectors"), plot.sectors, layout);
  rimNames(frame.layer("rim-names"), plot.rimNames, layout);
  const obstacles = plot.spokes.flatMap(({ angle }) =>
    Array.from({ length: ON_SPOKE }, (_, i): Obstacle => layout.spot(angle, (i / ON_SPOKE) * layout.radius)),
  );
  names(frame.layer("names"), plot, layout, { contours: [], obstacles });
}
