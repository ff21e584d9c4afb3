import type { Bar, BarPlot } from "../model/bars.ts";
import type { ChartSize } from "../size.ts";
import { chartFrame, type Group } from "./frame.ts";
import { scaleOf } from "./scales.ts";
import { clippedText, textWidth } from "./type.ts";

const [ROW, THICKNESS] = [40, 9];
/** By which the zero line looks out over a bar [px]. */
const OVER = 2;
/** Baseline of a row's text, and top of its bar [px]. */
const [TEXT, TOP] = [14, 20];
const MARGIN = { top: 4, right: 2, bottom: 6, left: 2 };
const SIDES_HEIGHT = 20;
/** Between a side's words and zero, and between a name and its figure [px]. */
const [BESIDE, BETWEEN] = [6, 10];

/** @returns height of the picture for so many bars [px] */
export function barsHeight(count: number): number {
  return MARGIN.top + MARGIN.bottom + SIDES_HEIGHT + count * ROW;
}

/** Bars at a width: where zero and their ends lie in the drawing. */
export interface BarsLayout {
  readonly size: ChartSize;
  /** of the rows [px] */
  readonly width: number;
  readonly zero: number;
  readonly x: (value: number) => number;
  /** end of a bar, in the drawing [px] */
  readonly end: (bar: Bar, row: number) => { readonly x: number; readonly y: number };
}

/** @returns the layout of bars at a size */
export function barsLayout({ bars }: BarPlot, size: ChartSize): BarsLayout {
  const width = Math.max(1, size.width - MARGIN.left - MARGIN.right);
  const values = bars.map(({ value }) => value);
  const x = scaleOf({ from: Math.min(0, ...values), to: Math.max(0, ...values) }, [0, width]);
  const end: BarsLayout["end"] = ({ value }, row) => ({
    x: MARGIN.left + x(value),
    y: MARGIN.top + row * ROW + TOP + THICKNESS / 2,
  });
  return { size, width, zero: x(0), x, end };
}

function words(g: Group, bars: readonly Bar[], { width }: BarsLayout): void {
  const room = ({ figure }: Bar) => width - textWidth(figure) - BETWEEN;
  g.selectAll<SVGTextElement, Bar>("text.chart-bar-name")
    .data(bars, ({ key }) => key)
    .join("text")
    .put("class", "chart-bar-name")
    .put("y", (_, row) => row * ROW + TEXT)
    .say((bar) => clippedText(bar.name, "", room(bar)));
  g.selectAll<SVGTextElement, Bar>("text.chart-bar-figure")
    .data(bars, ({ key }) => key)
    .join("text")
    .put("class", "chart-bar-figure")
    .put("x", width)
    .put("text-anchor", "end")
    .put("y", (_, row) => row * ROW + TEXT)
    .say(({ figure }) => figure);
}

function shapes(g: Group, bars: readonly Bar[], { x, zero }: BarsLayout): void {
  g.selectAll<SVGRectElement, Bar>("rect")
    .data(bars, ({ key }) => key)
    .join("rect")
    .put("class", ({ value, tone }) => `chart-bar tone-${tone} ${value > 0 ? "above" : "below"}`)
    .put("x", ({ value }) => Math.min(zero, x(value)))
    .put("width", ({ value }) => Math.max(1, Math.abs(x(value) - zero)))
    .put("y", (_, row) => row * ROW + TOP)
    .put("height", THICKNESS);
}

/** A piece of the zero line at every bar: names may run across between them. */
function zeroLine(g: Group, { bars, sides }: BarPlot, { zero, width }: BarsLayout): void {
  g.selectAll<SVGLineElement, number>("line")
    .data(bars.map((_, row) => row * ROW + TOP))
    .join("line")
    .put("class", "axis-line")
    .put("x1", zero)
    .put("x2", zero)
    .put("y1", (top) => top - OVER)
    .put("y2", (top) => top + THICKNESS + OVER);
  const named = [
    { text: sides.below, anchor: "end", at: zero - BESIDE, room: zero },
    { text: sides.above, anchor: "start", at: zero + BESIDE, room: width - zero },
  ].filter(({ text, room }) => textWidth(text) + BESIDE <= room);
  g.selectAll<SVGTextElement, (typeof named)[number]>("text")
    .data(named)
    .join("text")
    .put("class", "tick-text")
    .put("text-anchor", ({ anchor }) => anchor)
    .put("x", ({ at }) => at)
    .put("y", bars.length * ROW + TEXT)
    .say(({ text }) => text);
}

/** Draws a bar for each value from zero, name and figure above it. */
export function drawBars(svg: SVGSVGElement, plot: BarPlot, layout: BarsLayout): void {
  const frame = chartFrame(svg, { ...layout.size, margin: MARGIN });
  const layer = (name: string) => frame.layer(name).put("aria-hidden", "true");
  zeroLine(layer("zero"), plot, layout);
  shapes(layer("bars"), plot.bars, layout);
  words(layer("words"), plot.bars, layout);
}
