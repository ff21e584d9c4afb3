import { formatFixed } from "../../../shared/units/format.ts";
import type { Axis } from "../model/plot.ts";
import type { Frame } from "./frame.ts";
import { decimalsOf, logTicks, type Scale } from "./scales.ts";
import { BASELINE } from "./type.ts";

export interface AxisOptions {
  /** hairlines across the plot; on one axis of a chart only */
  readonly grid?: boolean;
  /** least pixels between ticks */
  readonly spacing?: number;
  /** false: the numbers alone, where the same axis is named under another plot */
  readonly named?: boolean;
}

const TICK = 5;
const SPACING = { x: 76, y: 54 };
/** From the plot's bottom to the baselines of numbers and name [px]. */
const [NUMBERS, NAME] = [20, 42];
const ABOVE = 12;
/** Names of upright axes begin so far outside the plot [px]. */
const OUTSIDE = 44;

interface Tick {
  readonly value: number;
  readonly at: number;
  readonly text: string;
}

function ticksOf(axis: Axis, scale: Scale, length: number, spacing: number): Tick[] {
  if (axis.log)
    return logTicks(axis.from, axis.to, length).map((value) => ({
      value,
      at: scale(value),
      text: formatFixed(value, decimalsOf(Number(value.toPrecision(1)))),
    }));
  const values = scale.ticks(Math.max(2, Math.floor(length / spacing)));
  const step = values.length > 1 ? Math.abs(values[1] - values[0]) : 1;
  const decimals = decimalsOf(step);
  return values.map((value) => ({ value, at: scale(value), text: formatFixed(value, decimals) }));
}

function written(frame: Frame, name: string, axis: Axis, named: boolean) {
  const g = frame.layer(`axis-${name}`).attr("aria-hidden", "true");
  const label = g
    .selectAll<SVGTextElement, string>(".axis-label")
    .data(named && axis.label !== "" ? [axis.label] : [])
    .join("text")
    .attr("class", "axis-label")
    .text((text) => text);
  return { g, label };
}

/** The axis along the bottom of the plot. */
export function axisBottom(frame: Frame, axis: Axis, scale: Scale, options: AxisOptions = {}): void {
  const { g, label } = written(frame, "bottom", axis, options.named ?? true);
  const ticks = ticksOf(axis, scale, frame.width, options.spacing ?? SPACING.x);
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
    .attr("y", bottom + NUMBERS)
    .text((tick) => tick.text);
  label
    .attr("text-anchor", "middle")
    .attr("x", frame.width / 2)
    .attr("y", bottom + NAME);
}

/** An axis up the left or the right side of the plot. */
export function axisSide(
  frame: Frame,
  axis: Axis,
  scale: Scale,
  options: AxisOptions & { readonly side: "left" | "right" },
): void {
  const right = options.side === "right";
  const { g, label } = written(frame, options.side, axis, true);
  const at = right ? frame.width : 0;
  const ticks = ticksOf(axis, scale, frame.height, options.spacing ?? SPACING.y);
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
    .attr("y", (tick) => tick.at + BASELINE)
    .text((tick) => tick.text);
  label
    .attr("text-anchor", right ? "end" : "start")
    .attr("x", right ? frame.width + OUTSIDE : -OUTSIDE)
    .attr("y", -ABOVE);
}

/** No axis on that side any more. */
export function noAxis(frame: Frame, side: "left" | "right"): void {
  frame.layer(`axis-${side}`).selectAll("*").remove();
}
