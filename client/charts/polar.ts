import { type PolarLayout, polarLayout } from "./draw/polar/layout.ts";
import { drawPolar } from "./draw/polar/plot.ts";
import type { Point } from "./model/plot.ts";
import type { PolarPlot } from "./model/polar.ts";
import { once, type Picture } from "./picture.ts";
import type { Spot } from "./read/spots.ts";

/** Outside the rim a pointer still reads so far [px]. */
const BEYOND = 24;
const RADIAN = Math.PI / 180;

/** @returns the angle that a pointer means [°]; null where it is off the half disc */
function angleUnder({ x, y }: Point, { margin, radius }: PolarLayout): number | null {
  const [right, down] = [x - margin.left, y - margin.top - radius];
  if (right < -BEYOND || Math.hypot(right, down) > radius + BEYOND) return null;
  return Math.atan2(Math.max(0, right), down) / RADIAN;
}

/** A half disc, read by angle; its stops are where it can be read. */
export function polarPicture(plot: PolarPlot): Picture {
  return (size) => {
    const layout = polarLayout(plot, size);
    const { left, top } = layout.margin;
    const stops = [...(plot.stops ?? [])].sort((a, b) => a.x - b.x);
    const spots = once(() =>
      stops.map((stop): Spot => {
        const [x, y] = layout.at(stop.x, stop.y);
        return { key: stop.key, x: x + left, y: y + top };
      }),
    );
    const far = ({ x, y }: Spot) => Math.hypot(x - left, y - top - layout.radius);
    return {
      draw: (svg) => drawPolar(svg, plot, layout),
      count: stops.length,
      layout: null,
      spots,
      under: (at) => {
        const angle = angleUnder(at, layout);
        if (angle === null || stops.length === 0) return null;
        const off = (i: number) => Math.abs(stops[i].x - angle);
        return spots()[stops.reduce((best, _, i) => (off(i) < off(best) ? i : best), 0)];
      },
      hairline: (spot) => {
        const centre = { x: left, y: top + layout.radius };
        const longer = layout.radius / (far(spot) || 1);
        const end = (from: number, to: number) => from + (to - from) * longer;
        return { from: centre, to: { x: end(centre.x, spot.x), y: end(centre.y, spot.y) } };
      },
    };
  };
}
