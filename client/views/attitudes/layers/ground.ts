import { STANDARD_GRAVITY } from "../../../../shared/physics/constants.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import type { Group } from "../../../charts/frame.ts";
import { arcPath, type PolarContext, spot } from "./polar.ts";

const NEWTON_PER_GRAM = STANDARD_GRAVITY / 1000;
const TICK_SPACING = 62;
const ANGLE_STEP = 10;
const TICK = 4;
const HALF_LINE = 4;

/** Hairline rings a round number of grams apart, their numbers up the straight side, ticks along the rim. */
export function groundLayer(g: Group, { r, radius }: PolarContext): void {
  g.attr("aria-hidden", "true");
  const inGrams = r.copy().domain(r.domain().map((newton) => newton / NEWTON_PER_GRAM));
  const ticks = inGrams.ticks(Math.max(2, Math.floor(radius / TICK_SPACING))).filter((tick) => tick > 0);
  g.selectAll<SVGPathElement, number>(".grid-line")
    .data(ticks, (tick) => tick)
    .join("path")
    .attr("class", "grid-line")
    .attr("fill", "none")
    .attr("d", (tick) => arcPath(inGrams(tick), 0, 180));
  g.selectAll<SVGPathElement, string>(".axis-line")
    .data([`M0,${-radius}V${radius}`, arcPath(radius, 0, 180)])
    .join("path")
    .attr("class", "axis-line")
    .attr("fill", "none")
    .attr("d", (d) => d);
  const angles = Array.from({ length: 180 / ANGLE_STEP + 1 }, (_, i) => i * ANGLE_STEP);
  g.selectAll<SVGPathElement, number>(".tick-line")
    .data(angles)
    .join("path")
    .attr("class", "tick-line")
    .attr("d", (angle) => `M${spot(angle, radius - TICK)}L${spot(angle, radius)}`);
  g.selectAll<SVGTextElement, number>(".tick-text")
    .data(ticks, (tick) => tick)
    .join("text")
    .attr("class", "tick-text")
    .attr("text-anchor", "end")
    .attr("x", -6)
    .attr("y", (tick) => HALF_LINE - inGrams(tick))
    .text((tick) => formatFixed(tick, 0));
  g.selectAll<SVGTextElement, string>(".axis-label")
    .data(["pull, g"])
    .join("text")
    .attr("class", "axis-label")
    .attr("text-anchor", "end")
    .attr("x", -6)
    .attr("y", HALF_LINE)
    .text((label) => label);
}
