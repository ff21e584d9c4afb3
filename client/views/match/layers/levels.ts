import type { Group } from "../../../charts/frame.ts";
import { type SideLabel, sideLabels } from "../../../charts/labels.ts";
import type { Level } from "../picture.ts";
import type { MatchContext } from "./context.ts";

/** Right of the plot and its pull axis [px]. */
const LABEL_X = { wide: 50, narrow: 42 } as const;
const WALL = 90;
const CEILING = 180;

/** On a phone one word: "wall", "153°"; the table has the names. */
function words({ title, angle, key }: Level, wide: boolean): string {
  const degrees = `${angle.toFixed(0)}°`;
  if (wide) return `${title}, ${degrees}`;
  if (angle === WALL) return "wall";
  if (angle === CEILING) return "ceiling";
  return key === "worst" ? "worst" : degrees;
}

/** Dotted level lines: above one it holds, below it falls. A level beyond the plot is named at its top. */
export function levelsLayer(g: Group, levels: readonly Level[], context: MatchContext): void {
  const { y, width, height, wide } = context;
  const top = y.domain()[1];
  const within = levels.filter((level) => level.pressure <= top);
  g.selectAll<SVGLineElement, Level>("line")
    .data(within, (level) => level.key)
    .join("line")
    .attr("class", "needed-line")
    .attr("x2", width)
    .attr("y1", (level) => y(level.pressure))
    .attr("y2", (level) => y(level.pressure));
  const labels: SideLabel[] = levels.map((level) => ({
    key: level.key,
    text: (level.pressure > top ? "↑ " : "") + words(level, wide),
    tail: `, ${level.angle.toFixed(0)}°`,
    y: Math.max(0, y(level.pressure)),
    tone: "needed-text",
  }));
  const off = wide ? LABEL_X.wide : LABEL_X.narrow;
  sideLabels(g, labels, { x: width + off, height, room: context.right - off });
}
