import type { Group } from "../../../charts/frame.ts";
import type { MeasuredPoint } from "../measured.ts";
import type { MatchContext } from "./context.ts";

const ARM = 4;
const RING = 8;

/** A tenth of a pixel is finer than a screen shows, and short to read. */
const tenths = (pixels: number): number => Math.round(10 * pixels) / 10;

function cross(x: number, y: number): string {
  return `M${tenths(x - ARM)},${tenths(y)}h${2 * ARM}m${-ARM},${-ARM}v${2 * ARM}`;
}

/** Readings as crosses, those set aside fainter; one path each, so that thousands cost no more than a few. */
export function measuredLayer(
  g: Group,
  data: { readonly points: readonly MeasuredPoint[]; readonly picked: number | null },
  { x, y }: MatchContext,
): void {
  const crosses = (aside: boolean) =>
    data.points
      .filter((point) => (point.setAside !== null) === aside)
      .map((point) => cross(x(point.flow), y(point.pressure)))
      .join("");
  const marks = [
    { key: "measured", d: crosses(false) },
    { key: "measured set-aside", d: crosses(true) },
  ];
  g.selectAll<SVGPathElement, (typeof marks)[number]>("path")
    .data(marks, (mark) => mark.key)
    .join("path")
    .attr("class", (mark) => mark.key)
    .attr("d", (mark) => mark.d);
  const picked = data.picked === null ? [] : data.points.slice(data.picked, data.picked + 1);
  g.selectAll<SVGCircleElement, MeasuredPoint>("circle")
    .data(picked)
    .join("circle")
    .attr("class", "picked")
    .attr("r", RING)
    .attr("cx", (point) => x(point.flow))
    .attr("cy", (point) => y(point.pressure));
}
