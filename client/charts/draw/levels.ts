import type { Level } from "../model/plot.ts";
import { styleOf } from "./curves.ts";
import type { Group } from "./frame.ts";
import type { Straight } from "./ground.ts";
import { sideText } from "./sideLabels.ts";

/** Beside an upright level, over the plot [px]. */
const [BESIDE, ABOVE] = [4, 5];

/** Straight lines across the whole plot: zero, a mean, what is needed. */
export function levels(g: Group, data: readonly Level[], ground: Straight): void {
  const { x, y, width, height, wide } = ground;
  const at = (level: Level) => (level.along === "x" ? y(level.at) : x(level.at));
  const within = data.filter((level) =>
    level.along === "x" ? ground.shows(0, at(level)) : ground.shows(at(level), 0),
  );
  g.selectAll<SVGLineElement, Level>("line")
    .data(within, (level) => level.key)
    .join("line")
    .put("class", (level) => `chart-level tone-${level.tone} ${styleOf(level.style).name}`)
    .put("x1", (level) => (level.along === "x" ? 0 : at(level)))
    .put("x2", (level) => (level.along === "x" ? width : at(level)))
    .put("y1", (level) => (level.along === "x" ? at(level) : 0))
    .put("y2", (level) => (level.along === "x" ? at(level) : height));
  const upright = within.flatMap((level) => {
    const said = level.along === "y" ? sideText(level.label, wide) : null;
    return said ? [{ ...level, text: said.text }] : [];
  });
  g.selectAll<SVGTextElement, (typeof upright)[number]>("text")
    .data(upright, (level) => level.key)
    .join("text")
    .put("class", (level) => `chart-label tone-${level.tone}`)
    .put("x", (level) => x(level.at) + BESIDE)
    .put("y", -ABOVE)
    .say((level) => level.text);
}
