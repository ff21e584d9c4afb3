import { axisBottom, axisSide } from "../../../charts/axes.ts";
import type { ChartSize } from "../../../charts/Chart.tsx";
import { chartFrame, type Frame, type Margin } from "../../../charts/frame.ts";
import { CHARACTER, drawEdgeLabels, edgeLabels } from "./labels.ts";
import { bands, brackets, levels, lines, marks } from "./layers.ts";
import type { Spot } from "./nearest.ts";
import type { Plot, Strip } from "./plot.ts";
import { logTicks, type Scales, scalesOf } from "./scales.ts";

/** From this width on the tests are named beside their points; below it a legend stands under the chart. */
const WIDE = 620;
const LEFT = 52;
const NARROW_RIGHT = 14;
const LABEL_FRAME = 36;
const TOP = 28;
const BOTTOM = 48;

/** @returns whether the tests' names stand in the drawing itself */
export function namesInside(width: number): boolean {
  return width >= WIDE;
}

const longest = (texts: readonly (string | undefined)[]) =>
  Math.max(0, ...texts.map((text) => text?.length ?? 0));

const stripText = ({ title, detail }: Strip) => (title === "" ? detail : `${title}, ${detail}`);

/** Largest share of the width that names at the right, and names of strips at the left, may take. */
const NAMES_SHARE = 0.34;
const STRIPS_SHARE = 0.44;

function marginOf(plot: Plot, width: number): Margin {
  const inside = namesInside(width);
  const names = inside ? (plot.shapes ?? []).map((shape) => shape.text) : [];
  const lines = inside ? (plot.lines ?? []).map((line) => line.label) : [];
  const room = longest([...names.map((name) => `  ${name}`), ...lines]) * CHARACTER;
  const right = room > 0 ? Math.min(room + LABEL_FRAME, width * NAMES_SHARE) : NARROW_RIGHT;
  if (!plot.strips) return { top: TOP, right, bottom: BOTTOM, left: LEFT };
  const left = longest(plot.strips.map(stripText)) * CHARACTER + STRIP_GAP;
  return { top: STRIP_TOP, right, bottom: BOTTOM, left: Math.min(width * STRIPS_SHARE, left) };
}

const STRIP_GAP = 14;
const STRIP_TOP = 8;

/** A strip's name in the room that it has: its title gives way, its detail stays. */
function fitted(strip: Strip, room: number): string {
  const characters = Math.floor((room - STRIP_GAP) / CHARACTER);
  const whole = stripText(strip);
  const left = characters - strip.detail.length - 3;
  if (whole.length <= characters || strip.title === "") return whole;
  return left > 2 ? `${strip.title.slice(0, left)}…, ${strip.detail}` : strip.detail;
}

function ticks(axis: Plot["x"], length: number): { ticks?: readonly number[] } {
  return axis.log ? { ticks: logTicks(axis.from, axis.to, length) } : {};
}

/** Plots lower than this get their ticks closer together [px]. */
const LOW = 200;
const LOW_SPACING = 28;

function strips(frame: Frame, names: readonly string[], { y }: Scales): void {
  frame
    .layer("strips")
    .attr("aria-hidden", "true")
    .selectAll<SVGTextElement, string>("text")
    .data(names)
    .join("text")
    .attr("class", "tick-text")
    .attr("text-anchor", "end")
    .attr("x", -10)
    .attr("y", (_, i) => y(i) + 4)
    .text((name) => name);
}

/** Draws a plot into an svg; called again it follows data and size. */
export function drawPlot(
  svg: SVGSVGElement,
  size: ChartSize,
  plot: Plot,
  chosen: string | null = null,
): Spot[] {
  const margin = marginOf(plot, size.width);
  const frame = chartFrame(svg, { ...size, margin });
  const scales = scalesOf(plot, frame);
  const box = { ...scales, width: frame.width, height: frame.height };
  if (plot.strips)
    strips(
      frame,
      plot.strips.map((strip) => fitted(strip, margin.left)),
      scales,
    );
  else
    axisSide(frame, scales.y, {
      side: "left",
      label: plot.y.label,
      grid: true,
      spacing: frame.height < LOW ? LOW_SPACING : undefined,
      ...ticks(plot.y, frame.height),
    });
  axisBottom(frame, scales.x, {
    label: plot.x.label,
    grid: plot.strips !== undefined,
    ...ticks(plot.x, frame.width),
  });
  const clipped = { clipped: true };
  bands(frame.layer("bands", clipped), plot.bands ?? [], scales);
  levels(frame.layer("levels", clipped), plot.levels ?? [], box);
  lines(frame.layer("lines", clipped), plot.lines ?? [], scales);
  brackets(frame.layer("brackets", clipped), plot.brackets ?? [], box);
  marks(frame.layer("marks"), plot.marks ?? [], scales);
  const named = namesInside(size.width) && !plot.namedAbove;
  const names = named ? edgeLabels(plot, scales) : [];
  drawEdgeLabels(frame.layer("names"), names, { ...box, room: margin.right });
  const spots = spotsOf(plot, scales, margin);
  drawChosen(
    frame,
    spots.filter((spot) => spot.key === chosen),
    margin,
  );
  return spots;
}

const CHOSEN = 11;

function drawChosen(frame: Frame, spots: readonly Spot[], margin: Margin): void {
  frame
    .layer("chosen")
    .attr("data-unsaved", "")
    .selectAll<SVGCircleElement, Spot>("circle")
    .data(spots, (spot) => spot.key)
    .join("circle")
    .attr("class", "curves-chosen")
    .attr("r", CHOSEN)
    .attr("cx", (spot) => spot.x - margin.left)
    .attr("cy", (spot) => spot.y - margin.top);
}

function spotsOf(plot: Plot, { x, y }: Scales, margin: Margin): Spot[] {
  const shift = (key: string, px: number, py: number) => ({ key, x: px + margin.left, y: py + margin.top });
  return [
    ...(plot.marks ?? []).map((mark) => shift(mark.key, x(mark.x), y(mark.y))),
    ...(plot.brackets ?? []).map((each) => {
      const middle = each.hi === null ? each.lo : (each.lo + each.hi) / 2;
      return each.along === "y"
        ? shift(each.key, x(each.at), y(middle))
        : shift(each.key, x(middle), y(each.at));
    }),
  ].filter((spot) => Number.isFinite(spot.x) && Number.isFinite(spot.y));
}
