import type { Sector, Spoke } from "../../model/polar.ts";
import { styleOf } from "../curves.ts";
import type { Group } from "../frame.ts";
import { arcPath, type PolarLayout } from "./layout.ts";

/** How far outside the rim the first ring runs, and each further one beyond it [px]. */
const [FIRST, NEXT] = [7, 8];
/** Between neighbouring sectors [°]. */
const SPLIT = 0.5;

/** @returns how far outside the rim a ring of sectors runs [px]; none for the rim itself */
export const ringOffset = (ring: number | null): number => (ring === null ? 0 : FIRST + NEXT * ring);

/** A line from the centre for every angle that has a name. */
export function spokes(g: Group, data: readonly Spoke[], { spot, radius }: PolarLayout): void {
  g.selectAll<SVGPathElement, Spoke>("path")
    .data(data, ({ key }) => key)
    .join("path")
    .put(
      "class",
      ({ tone, style, weight }) => `chart-spoke tone-${tone} ${styleOf(style).name} ${weight ?? "fine"}`,
    )
    .put("d", ({ angle }) => `M${spot(angle, 0)}L${spot(angle, radius)}`);
}

/** Rings round the rim: what holds over which angles. */
export function sectors(g: Group, data: readonly Sector[], layout: PolarLayout): void {
  g.selectAll<SVGPathElement, Sector>("path")
    .data(data, ({ key }) => key)
    .join("path")
    .put(
      "class",
      ({ tone, style, weight }) => `chart-sector tone-${tone} ${styleOf(style).name} ${weight ?? "normal"}`,
    )
    .put("d", ({ ring, from, to }) => {
      const gap = Math.min(SPLIT, (to - from) / 4);
      return arcPath(layout, layout.radius + ringOffset(ring), from + gap, to - gap);
    });
}
