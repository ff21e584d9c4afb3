import { scaleLinear } from "d3";
import type { Uncertainty } from "../../../shared/decide/uncertainty.ts";
import { STANDARD_GRAVITY } from "../../../shared/physics/constants.ts";
import { axisBottom, axisSide } from "../../charts/axes.ts";
import type { ChartSize } from "../../charts/Chart.tsx";
import { chartFrame, type Frame, type Margin } from "../../charts/frame.ts";
import { cavityPoint } from "../../state/outcome.ts";
import type { MatchContext } from "./layers/context.ts";
import { curvesLayer, ghostLayer } from "./layers/curves.ts";
import { levelsLayer } from "./layers/levels.ts";
import { measuredLayer } from "./layers/measured.ts";
import { namesLayer } from "./layers/names.ts";
import { type Overlay, overlayLayer } from "./layers/overlays.ts";
import { pointLayer } from "./layers/point.ts";
import { spreadLayer } from "./layers/spread.ts";
import type { Picture } from "./picture.ts";

export interface MatchDrawing {
  readonly picture: Picture;
  /** the build as it stands, while something is tried */
  readonly ghost: Picture | null;
  readonly overlays: readonly Overlay[];
  /** direct labels of the curves */
  readonly fan: string;
  readonly leak: string;
  /** index of the reading that is pointed at */
  readonly picked: number | null;
  readonly duration: number;
  /** 5 to 95 % of the operating point's samples; null where not known */
  readonly spread: Uncertainty["point"];
}

/** Flow is shown in litres, pull in grams. */
const LITRES = 1000;
const GRAMS = 1000;
/** From this width on level labels stand beside the plot [px]. */
export const WIDE = 560;
const MARGIN = {
  wide: { top: 30, right: 188, bottom: 48, left: 54 },
  narrow: { top: 30, right: 110, bottom: 48, left: 44 },
} as const;

/** @returns the room round the plot: axes, and level labels at the right */
export function matchMargin(width: number): Margin {
  return width >= WIDE ? MARGIN.wide : MARGIN.narrow;
}

/** @returns where the plot lies in a picture of that size, inside its margins [px] */
export function plotIn({ width, height }: ChartSize) {
  const { left, right, top, bottom } = matchMargin(width);
  return { left, top, width: Math.max(1, width - left - right), height: Math.max(1, height - top - bottom) };
}

/** @returns scales of the plot: flow [m³/s] and pressure [Pa] to pixels */
export function matchScales(drawing: MatchDrawing, rangeX: [number, number], rangeY: [number, number]) {
  const all = [
    drawing.picture,
    ...(drawing.ghost ? [drawing.ghost] : []),
    ...drawing.overlays.map((o) => o.picture),
  ];
  const flow = Math.max(...all.map((picture) => picture.mostFlow));
  const pressure = Math.max(...all.map((picture) => picture.mostPressure));
  return {
    x: scaleLinear([0, flow], rangeX),
    y: scaleLinear([0, pressure], rangeY),
  };
}

function axes(frame: Frame, drawing: MatchDrawing, { x, y }: Pick<MatchContext, "x" | "y">): void {
  const litres = scaleLinear(
    x.domain().map((flow) => flow * LITRES),
    x.range(),
  );
  axisBottom(frame, litres, { label: "flow, L/s" });
  axisSide(frame, y, { label: "pressure, Pa", side: "left", grid: true });
  const pull = drawing.picture.outcome.pullPerPascal;
  const grams = y.domain().map((pressure) => (pressure * (pull ?? 0) * GRAMS) / STANDARD_GRAVITY);
  if (pull === null) frame.layer("axis-right").selectAll("*").remove();
  else axisSide(frame, scaleLinear(grams, y.range()), { label: "pull, g", side: "right" });
}

/** Draws the match chart; called again with new data it moves what is there. */
export function drawMatch(svg: SVGSVGElement, drawing: MatchDrawing, size: ChartSize): void {
  const margin = matchMargin(size.width);
  const frame = chartFrame(svg, { ...size, margin });
  const { x, y } = matchScales(drawing, frame.rangeX, frame.rangeY);
  const { width, height } = frame;
  const { duration } = drawing;
  const wide = size.width >= WIDE;
  const context: MatchContext = { x, y, width, height, right: margin.right, duration, wide };
  const { picture, ghost } = drawing;
  axes(frame, drawing, context);
  ghostLayer(frame.layer("ghost", { clipped: true }), ghost?.curves ?? null, context);
  curvesLayer(frame.layer("curves", { clipped: true }), picture.curves, context);
  overlayLayer(frame.layer("overlays", { clipped: true }), drawing.overlays, context);
  levelsLayer(frame.layer("levels"), picture.levels, context);
  measuredLayer(
    frame.layer("measured", { clipped: true }),
    { points: picture.measured, picked: drawing.picked },
    context,
  );
  const ghostPoint = ghost && cavityPoint(ghost.outcome);
  spreadLayer(frame.layer("spread"), drawing.spread, context);
  pointLayer(frame.layer("point"), { point: cavityPoint(picture.outcome), ghost: ghostPoint }, context);
  namesLayer(frame.layer("names"), drawing, context);
}
