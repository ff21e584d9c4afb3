import { extent, line, scaleLinear, select } from "d3";
import type { Sample } from "../../../shared/physics/rundown.ts";
import { axisBottom, axisSide } from "../../charts/axes.ts";
import type { ChartSize } from "../../charts/Chart.tsx";
import { chartFrame } from "../../charts/frame.ts";
import type { Answered } from "./answer.ts";
import { fallRings, levelLines, type MarginScales, marginLines, marginNames, mostMargin } from "./margins.ts";
import { type Panel, panelsOf } from "./panels.ts";

const MINUTE = 60;
/** From this width on the names at the right have more room [px]. */
const WIDE = 560;
const RIGHT = { wide: 140, narrow: 106 } as const;
const SIDE = { left: 46, bottom: 26 } as const;
const TOP = 34;
const AXIS_NAME = 22;
const SMALL = 132;
const TICK_SPACING = { x: 44, y: 24 } as const;
const [LEAST_MAIN, MOST_MAIN, SHAPE] = [260, 420, 0.5];
/** A quantity that hardly changes is not blown up to fill its chart: least span of its axis, of its value [-]. */
const LEAST_SPAN = 0.1;

function mainHeight(width: number): number {
  return Math.round(Math.min(MOST_MAIN, Math.max(LEAST_MAIN, width * SHAPE)));
}

/** @returns height of the whole picture: the margins, then the small charts [px] */
export function rundownHeight(answered: Answered): (width: number) => number {
  return (width) => mainHeight(width) + panelsOf(answered).length * SMALL + AXIS_NAME;
}

/** A drawing inside the drawing, at its own height; made once. */
function part(svg: SVGSVGElement, key: string, y: number, width: number): SVGSVGElement {
  const found = svg.querySelector<SVGSVGElement>(`:scope > svg[data-part="${key}"]`);
  const made = found ?? svg.appendChild(document.createElementNS("http://www.w3.org/2000/svg", "svg"));
  select(made).attr("data-part", key).attr("x", 0).attr("y", y).attr("width", width);
  return made;
}

function marginOf(width: number, bottom: number) {
  return { top: TOP, right: width >= WIDE ? RIGHT.wide : RIGHT.narrow, bottom, left: SIDE.left };
}

function lastMinute({ end }: Answered): number {
  return Math.max(end.time, 1) / MINUTE;
}

function drawMargins(svg: SVGSVGElement, answered: Answered, size: ChartSize): void {
  const margin = marginOf(size.width, SIDE.bottom);
  const frame = chartFrame(svg, { ...size, margin });
  const x = scaleLinear([0, lastMinute(answered)], frame.rangeX);
  const y = scaleLinear([0, mostMargin(answered)], frame.rangeY);
  const scales: MarginScales = { x, y, right: margin.right, wide: size.width >= WIDE };
  axisBottom(frame, x, { label: "", spacing: TICK_SPACING.x });
  axisSide(frame, y, { label: "margin: pull made over pull needed", side: "left", grid: true });
  levelLines(frame.layer("levels"), answered, scales, frame);
  marginLines(frame.layer("margins", { clipped: true }), answered, scales);
  fallRings(frame.layer("falls"), answered, scales);
  marginNames(frame.layer("names"), answered, scales, frame);
}

function spanOf(values: readonly number[]): [number, number] {
  const [low = 0, high = 0] = extent(values);
  const lacking = Math.max(0, LEAST_SPAN * Math.abs(high) - (high - low)) / 2;
  return [low - lacking, high + lacking || 1];
}

function drawPanel(
  svg: SVGSVGElement,
  answered: Answered,
  panel: Panel,
  { last, ...size }: ChartSize & { readonly last: boolean },
): void {
  const bottom = last ? SIDE.bottom + AXIS_NAME : SIDE.bottom;
  const frame = chartFrame(svg, { ...size, margin: marginOf(size.width, bottom) });
  const x = scaleLinear([0, lastMinute(answered)], frame.rangeX);
  const y = scaleLinear(spanOf(answered.samples.map(panel.value)), frame.rangeY).nice(3);
  axisBottom(frame, x, { label: last ? "time, min" : "", spacing: TICK_SPACING.x });
  axisSide(frame, y, { label: panel.label, side: "left", grid: true, spacing: TICK_SPACING.y });
  const path = line<Sample>(
    (sample) => x(sample.time / MINUTE),
    (sample) => y(panel.value(sample)),
  )(answered.samples);
  frame
    .layer("line")
    .selectAll("path")
    .data([path])
    .join("path")
    .attr("class", "run-line")
    .attr("d", (d) => d);
}

/** Draws the run: margins, and below them voltage, speed and winding over the same minutes. */
export function drawRundown(svg: SVGSVGElement, answered: Answered, { width, height }: ChartSize): void {
  select(svg).attr("width", width).attr("height", height);
  const main = mainHeight(width);
  const panels = panelsOf(answered);
  drawMargins(part(svg, "margins", 0, width), answered, { width, height: main });
  panels.forEach((panel, i) => {
    const last = i === panels.length - 1;
    const size = { width, height: last ? SMALL + AXIS_NAME : SMALL, last };
    drawPanel(part(svg, panel.key, main + i * SMALL, width), answered, panel, size);
  });
  for (const each of svg.querySelectorAll<SVGSVGElement>(":scope > svg[data-part]"))
    if (each.dataset.part !== "margins" && !panels.some(({ key }) => key === each.dataset.part))
      each.remove();
}
