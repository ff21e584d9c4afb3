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
  g.put("aria-hidden", "true");
  const ticks = r.ticks(Math.max(2, Math.floor(radius / SPACING))).filter((tick) => tick > 0);
  const decimals = decimalsOf(ticks[0] ?? 1);
  g.selectAll<SVGPathElement, number>(".grid-line")
    .data(ticks, (tick) => tick)
    .join("path")
    .put("class", "grid-line")
    .put("fill", "none")
    .put("d", (tick) => arcPath(layout, r(tick), 0, HALF_TURN));
  g.selectAll<SVGPathElement, string>(".axis-line")
    .data([`M0,0V${2 * radius}`, arcPath(layout, radius, 0, HALF_TURN)])
    .join("path")
    .put("class", "axis-line")
    .put("fill", "none")
    .put("d", (d) => d);
  g.selectAll<SVGPathElement, number>(".tick-line")
    .data(Array.from({ length: HALF_TURN / ANGLE_STEP + 1 }, (_, i) => i * ANGLE_STEP))
    .join("path")
    .put("class", "tick-line")
    .put("d", (angle) => `M${spot(angle, radius - TICK)}L${spot(angle, radius)}`);
  g.selectAll<SVGTextElement, number>(".tick-text")
    .data(ticks, (tick) => tick)
    .join("text")
    .put("class", "tick-text")
    .put("text-anchor", "end")
    .put("x", -BEFORE)
    .put("y", (tick) => radius - r(tick) + BASELINE)
    .say((tick) => formatFixed(tick, decimals));
  g.selectAll<SVGTextElement, string>(".axis-label")
    .data([axis.label])
    .join("text")
    .put("class", "axis-label")
    .put("text-anchor", "end")
    .put("x", -BEFORE)
    .put("y", radius + BASELINE)
    .say((label) => label);
}
