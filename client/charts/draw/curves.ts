import type { Line, Ribbon, Spread, Style } from "../model/plot.ts";
import type { Group } from "./frame.ts";
import { glide } from "./glide.ts";
import type { Ground } from "./ground.ts";
import { linePath, ribbonPath } from "./path.ts";

/** Bands and ribbons, the wider and lighter ones first. */
export function ribbons(g: Group, data: readonly Ribbon[], { at, motion }: Ground): void {
  const path = (ribbon: Ribbon) => ribbonPath(ribbon, at);
  const joined = g
    .selectAll<SVGPathElement, Ribbon>("path")
    .data(data, ({ key }) => key)
    .join((enter) => enter.append("path").put("d", path))
    .put("class", ({ tone, strength }) => `chart-band tone-${tone} ${strength}`)
    .order();
  glide(joined, motion, { d: path });
}

/** @returns the class of a line style, and the pattern of one that has none */
export const styleOf = (style: Style = "solid"): { readonly name: string; readonly dash: string | null } =>
  typeof style === "string" ? { name: style, dash: null } : { name: "own", dash: style.dash };

/** Fitted, computed and compared lines; a value that is missing breaks the line. */
export function lines(g: Group, data: readonly Line[], { at, motion }: Ground): void {
  const path = (line: Line) => linePath(line.points, at);
  const joined = g
    .selectAll<SVGPathElement, Line>("path")
    .data(data, (line) => line.key)
    .join((enter) => enter.append("path").put("d", path))
    .put(
      "class",
      ({ tone, style, weight }) => `chart-line tone-${tone} ${styleOf(style).name} ${weight ?? "normal"}`,
    )
    .put("stroke-dasharray", ({ style }) => styleOf(style).dash)
    .order();
  glide(joined, motion, { d: path });
}

/** Half of a whisker's end [px]. */
const END = 4;

function whiskers(spread: Spread, at: Ground["at"]): string {
  const along = (spread.x ?? []).map((x) => at(x, spread.at.y));
  const up = (spread.y ?? []).map((y) => at(spread.at.x, y));
  const bar = (ends: readonly (readonly [number, number])[]) =>
    ends.length === 2 ? `M${ends[0]}L${ends[1]}` : "";
  return [
    bar(along),
    ...along.map(([x, y]) => `M${x},${y - END}v${2 * END}`),
    bar(up),
    ...up.map(([x, y]) => `M${x - END},${y}h${2 * END}`),
  ].join("");
}

/** Whiskers of computed points. */
export function spreads(g: Group, data: readonly Spread[], { at }: Ground): void {
  g.selectAll<SVGPathElement, Spread>("path")
    .data(data, (spread) => spread.key)
    .join("path")
    .put("class", "chart-spread")
    .put("d", (spread) => whiskers(spread, at));
}
