import { formatFixed } from "../../../shared/units/format.ts";
import type { Axis } from "../model/plot.ts";
import type { Frame } from "./frame.ts";
import { decimalsOf, logTicks, type Scale } from "./scales.ts";
import { BASELINE, clippedText } from "./type.ts";

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
  const g = frame.layer(`axis-${name}`).put("aria-hidden", "true");
  const label = g
    .selectAll<SVGTextElement, string>(".axis-label")
    .data(named && axis.label !== "" ? [axis.label] : [])
    .join("text")
    .put("class", "axis-label")
    .say((text) => clippedText(text, "", frame.total));
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
    .put("class", "axis-line")
    .put("x2", frame.width)
    .put("y1", bottom)
    .put("y2", bottom);
  g.selectAll<SVGLineElement, Tick>(".tick-line")
    .data(ticks, (tick) => tick.value)
    .join("line")
    .put("class", options.grid ? "grid-line tick-line" : "tick-line")
    .put("x1", (tick) => tick.at)
    .put("x2", (tick) => tick.at)
    .put("y1", options.grid ? 0 : bottom)
    .put("y2", bottom + TICK);
  g.selectAll<SVGTextElement, Tick>(".tick-text")
    .data(ticks, (tick) => tick.value)
    .join("text")
    .put("class", "tick-text")
    .put("text-anchor", "middle")
    .put("x", (tick) => tick.at)
    .put("y", bottom + NUMBERS)
    .say((tick) => tick.text);
  label
    .put("text-anchor", "middle")
    .put("x", frame.width / 2)
    .put("y", bottom + NAME);
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
    .put("class", "grid-line")
    .put("x2", frame.width)
    .put("y1", (tick) => tick.at)
    .put("y2", (tick) => tick.at);
  g.selectAll<SVGLineElement, null>(".axis-line")
    .data([null])
    .join("line")
    .put("class", "axis-line")
    .put("x1", at)
    .put("x2", at)
    .put("y2", frame.height);
  g.selectAll<SVGLineElement, Tick>(".tick-line")
    .data(ticks, (tick) => tick.value)
    .join("line")
    .put("class", "tick-line")
    .put("x1", at)
    .put("x2", right ? at + TICK : at - TICK)
    .put("y1", (tick) => tick.at)
    .put("y2", (tick) => tick.at);
  g.selectAll<SVGTextElement, Tick>(".tick-text")
    .data(ticks, (tick) => tick.value)
    .join("text")
    .put("class", "tick-text")
    .put("text-anchor", right ? "start" : "end")
    .put("x", right ? at + 2 * TICK : at - 2 * TICK)
    .put("y", (tick) => tick.at + BASELINE)
    .say((tick) => tick.text);
  label
    .put("text-anchor", right ? "end" : "start")
    .put("x", right ? frame.width + OUTSIDE : -OUTSIDE)
    .put("y", -ABOVE);
}

/** No axis on that side any more. */
export function noAxis(frame: Frame, side: "left" | "right"): void {
  frame.layer(`axis-${side}`).selectAll("*").remove();
}
