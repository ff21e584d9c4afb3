import type { ScaleContinuousNumeric } from "d3";
import { formatFixed } from "../../shared/units/format.ts";
import type { Frame } from "./draw/frame.ts";

export type Scale = ScaleContinuousNumeric<number, number>;

export interface AxisOptions {
  /** quantity and unit: "flow, L/s" */
  readonly label: string;
  /** hairlines across the plot; on one axis of a chart only */
  readonly grid?: boolean;
  /** least pixels between ticks */
  readonly spacing?: number;
  /** where to put them, such as the 1, 2, 5 of a logarithmic scale; evenly otherwise */
  readonly ticks?: readonly number[];
}

const TICK = 5;
const GRID_SPACING = { x: 72, y: 56 };
const HALF_LINE = 4;

interface Tick {
  readonly value: number;
  readonly at: number;
  readonly text: string;
}

const decimalsOf = (size: number) => Math.max(0, -Math.floor(Math.log10(size) + 1e-9));

function ticksOf(scale: Scale, length: number, spacing: number, given?: readonly number[]): Tick[] {
  if (given)
    return given.map((value) => ({ value, at: scale(value), text: formatFixed(value, decimalsOf(value)) }));
  const values = scale.ticks(Math.max(2, Math.floor(length / spacing)));
  const step = values.length > 1 ? Math.abs(values[1] - values[0]) : 1;
  const decimals = decimalsOf(step);
  return values.map((value) => ({ value, at: scale(value), text: formatFixed(value, decimals) }));
}

/** The axis along the bottom of the plot. */
export function axisBottom(frame: Frame, scale: Scale, options: AxisOptions): void {
  const g = frame.layer("axis-bottom").attr("aria-hidden", "true");
  const ticks = ticksOf(scale, frame.width, options.spacing ?? GRID_SPACING.x, options.ticks);
  const bottom = frame.height;
  g.selectAll<SVGLineElement, null>(".axis-line")
    .data([null])
    .join("line")
    .attr("class", "axis-line")
    .attr("x2", frame.width)
    .attr("y1", bottom)
    .attr("y2", bottom);
  g.selectAll<SVGLineElement, Tick>(".tick-line")
    .data(ticks, (tick) => tick.value)
    .join("line")
    .attr("class", options.grid ? "grid-line tick-line" : "tick-line")
    .attr("x1", (tick) => tick.at)
    .attr("x2", (tick) => tick.at)
    .attr("y1", options.grid ? 0 : bottom)
    .attr("y2", bottom + TICK);
  g.selectAll<SVGTextElement, Tick>(".tick-text")
    .data(ticks, (tick) => tick.value)
    .join("text")
    .attr("class", "tick-text")
    .attr("text-anchor", "middle")
    .attr("x", (tick) => tick.at)
    .attr("y", bottom + 19)
    .text((tick) => tick.text);
  g.selectAll<SVGTextElement, string>(".axis-label")
    .data([options.label])
    .join("text")
    .attr("class", "axis-label")
    .attr("text-anchor", "middle")
    .attr("x", frame.width / 2)
    .attr("y", bottom + 40)
    .text((label) => label);
}

/** An axis up the left or the right side of the plot. */
export function axisSide(
  frame: Frame,
  scale: Scale,
  options: AxisOptions & { readonly side: "left" | "right" },
): void {
  const right = options.side === "right";
  const g = frame.layer(`axis-${options.side}`).attr("aria-hidden", "true");
  const at = right ? frame.width : 0;
  const ticks = ticksOf(scale, frame.height, options.spacing ?? GRID_SPACING.y, options.ticks);
  g.selectAll<SVGLineElement, Tick>(".grid-line")
    .data(options.grid ? ticks : [], (tick) => tick.value)
    .join("line")
    .attr("class", "grid-line")
    .attr("x2", frame.width)
    .attr("y1", (tick) => tick.at)
    .attr("y2", (tick) => tick.at);
  g.selectAll<SVGLineElement, null>(".axis-line")
    .data([null])
    .join("line")
    .attr("class", "axis-line")
    .attr("x1", at)
    .attr("x2", at)
    .attr("y2", frame.height);
  g.selectAll<SVGLineElement, Tick>(".tick-line")
    .data(ticks, (tick) => tick.value)
    .join("line")
    .attr("class", "tick-line")
    .attr("x1", at)
    .attr("x2", right ? at + TICK : at - TICK)
    .attr("y1", (tick) => tick.at)
    .attr("y2", (tick) => tick.at);
  g.selectAll<SVGTextElement, Tick>(".tick-text")
    .data(ticks, (tick) => tick.value)
    .join("text")
    .attr("class", "tick-text")
    .attr("text-anchor", right ? "start" : "end")
    .attr("x", right ? at + 2 * TICK : at - 2 * TICK)
    .attr("y", (tick) => tick.at + HALF_LINE)
    .text((tick) => tick.text);
  g.selectAll<SVGTextElement, string>(".axis-label")
    .data([options.label])
    .join("text")
    .attr("class", "axis-label")
    .attr("text-anchor", right ? "end" : "start")
    .attr("x", right ? frame.width + 40 : -40)
    .attr("y", -12)
    .text((label) => label);
}
