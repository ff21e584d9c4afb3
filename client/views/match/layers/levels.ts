import type { Group } from "../../../charts/frame.ts";
import { type SideLabel, sideLabels } from "../../../charts/labels.ts";
import type { Level } from "../picture.ts";
import type { MatchContext } from "./context.ts";

const LABEL_X = 50;

function words(level: Level, beyond: boolean, wide: boolean): string {
  const degrees = `${level.angle.toFixed(0)}°`;
  const title = wide ? level.title : level.title.split(" (")[0];
  return beyond ? `↑ ${title}, ${degrees}` : `${title}, ${degrees}`;
}

/** Dotted level lines: above one it holds, below it falls. A level beyond the plot is named at its top; on a phone the names stand in the plot at its right end. */
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
    text: words(level, level.pressure > top, wide),
    y: Math.max(0, y(level.pressure)),
    tone: wide ? "needed-text" : "needed-text halo",
  }));
  sideLabels(g, labels, wide ? { x: width + LABEL_X, height } : { x: width, height, inside: true });
}
