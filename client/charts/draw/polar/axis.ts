import { formatFixed } from "../../../../shared/units/format.ts";
import type { PolarPlot } from "../../model/polar.ts";
import type { Group } from "../frame.ts";
import { decimalsOf } from "../scales.ts";
import { BASELINE } from "../type.ts";
import { arcPath, type PolarLayout } from "./layout.ts";

const SPACING = 62;
const ANGLE_STEP = 10;
const [TICK, BEFORE] = [4, 6];
const HALF_TURN = 180;

/** Hairline rings at round numbers, which stand up the straight side; ticks along the rim. */
export function polarAxis(g: Group, { axis }: PolarPlot, layout: PolarLayout): void {
  const { r, radius, spot } = layout;
  g.attr("aria-hidden", "true");
  const ticks = r.ticks(Math.max(2, Math.floor(radius / SPACING))).filter((tick) => tick > 0);
  const decimals = decimalsOf(ticks[0] ?? 1);
  g.selectAll<SVGPathElement, number>(".grid-line")
    .data(ticks, (tick) => tick)
    .join("path")
    .attr("class", "grid-line")
    .attr("fill", "none")
    .attr("d", (tick) => arcPath(layout, r(tick), 0, HALF_TURN));
  g.selectAll<SVGPathElement, string>(".axis-line")
    .data([`M0,0V${2 * radius}`, arcPath(layout, radius, 0, HALF_TURN)])
    .join("path")
    .attr("class", "axis-line")
    .attr("fill", "none")
    .attr("d", (d) => d);
  g.selectAll<SVGPathElement, number>(".tick-line")
    .data(Array.from({ length: HALF_TURN / ANGLE_STEP + 1 }, (_, i) => i * ANGLE_STEP))
    .join("path")
    .attr("class", "tick-line")
    .attr("d", (angle) => `M${spot(angle, radius - TICK)}L${spot(angle, radius)}`);
  g.selectAll<SVGTextElement, number>(".tick-text")
    .data(ticks, (tick) => tick)
    .join("text")
    .attr("class", "tick-text")
    .attr("text-anchor", "end")
    .attr("x", -BEFORE)
    .attr("y", (tick) => radius - r(tick) + BASELINE)
    .text((tick) => formatFixed(tick, decimals));
  g.selectAll<SVGTextElement, string>(".axis-label")
    .data([axis.label])
    .join("text")
    .attr("class", "axis-label")
    .attr("text-anchor", "end")
    .attr("x", -BEFORE)
    .attr("y", radius + BASELINE)
    .text((label) => label);
}
