import { scaleLinear } from "d3";
import type { ChartSize } from "../../../charts/Chart.tsx";
import { chartFrame, type Group } from "../../../charts/frame.ts";
import { type Bar, elasticityText, shareText } from "./bars.ts";

const ROW = 40;
const BAR = 9;
/** By which the zero line looks out over a bar [px]. */
const OVER = 2;
/** Baseline of the row's text, and top of its bar [px]. */
const [TEXT, TOP] = [14, 20];
const MARGIN = { top: 4, right: 2, bottom: 6, left: 2 };
const KEY_HEIGHT = 20;

/** @returns height of the picture for so many bars [px] */
export function barsHeight(count: number): number {
  return MARGIN.top + MARGIN.bottom + KEY_HEIGHT + count * ROW;
}

interface Place {
  readonly zero: number;
  readonly x: (elasticity: number) => number;
  readonly width: number;
}

function placeOf(bars: readonly Bar[], width: number): Place {
  const values = bars.map(({ elasticity }) => elasticity);
  const x = scaleLinear([Math.min(0, ...values), Math.max(0, ...values)], [0, width]);
  return { zero: x(0), x, width };
}

function texts(g: Group, bars: readonly Bar[], { width }: Place): void {
  g.selectAll<SVGTextElement, Bar>("text.bar-name")
    .data(bars, (bar) => bar.path)
    .join("text")
    .attr("class", "bar-name")
    .attr("y", (_, i) => i * ROW + TEXT)
    .text((bar) => bar.name);
  g.selectAll<SVGTextElement, Bar>("text.bar-figure")
    .data(bars, (bar) => bar.path)
    .join("text")
    .attr("class", "bar-figure")
    .attr("x", width)
    .attr("text-anchor", "end")
    .attr("y", (_, i) => i * ROW + TEXT)
    .text((bar) => [shareText(bar), elasticityText(bar.elasticity)].filter(Boolean).join(", "));
}

function marks(g: Group, bars: readonly Bar[], { x, zero }: Place): void {
  g.selectAll<SVGRectElement, Bar>("rect")
    .data(bars, (bar) => bar.path)
    .join("rect")
    .attr("class", ({ elasticity }) => (elasticity > 0 ? "bar-more" : "bar-less"))
    .attr("x", ({ elasticity }) => Math.min(zero, x(elasticity)))
    .attr("width", ({ elasticity }) => Math.max(1, Math.abs(x(elasticity) - zero)))
    .attr("y", (_, i) => i * ROW + TOP)
    .attr("height", BAR);
}

/** A tick of the zero line at every bar: names may run across between them. */
function zeroLine(g: Group, count: number, { zero, width }: Place): void {
  const bottom = count * ROW;
  g.selectAll<SVGLineElement, number>("line")
    .data(Array.from({ length: count }, (_, i) => i * ROW + TOP))
    .join("line")
    .attr("class", "axis-line")
    .attr("x1", zero)
    .attr("x2", zero)
    .attr("y1", (top) => top - OVER)
    .attr("y2", (top) => top + BAR + OVER);
  const sides = [
    { text: "← less margin", anchor: "end", at: zero - 6, room: zero },
    { text: "more margin →", anchor: "start", at: zero + 6, room: width - zero },
  ];
  g.selectAll<SVGTextElement, (typeof sides)[number]>("text")
    .data(sides.filter(({ room }) => room > 96))
    .join("text")
    .attr("class", "tick-text")
    .attr("text-anchor", ({ anchor }) => anchor)
    .attr("x", ({ at }) => at)
    .attr("y", bottom + TEXT)
    .text(({ text }) => text);
}

/** Draws a bar for each input from 0 to its per cent of margin per per cent, name and figure above it. */
export function drawBars(svg: SVGSVGElement, bars: readonly Bar[], size: ChartSize): void {
  const frame = chartFrame(svg, { ...size, margin: MARGIN });
  const place = placeOf(bars, frame.width);
  zeroLine(frame.layer("zero").attr("aria-hidden", "true"), bars.length, place);
  marks(frame.layer("bars").attr("aria-hidden", "true"), bars, place);
  texts(frame.layer("texts").attr("aria-hidden", "true"), bars, place);
}
