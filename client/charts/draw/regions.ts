import type { Region, Tone } from "../model/plot.ts";
import { child, type Group } from "./frame.ts";
import type { Ground } from "./ground.ts";
import { outlinePath } from "./path.ts";

/** Between two lines of the hatching [px]. */
const PITCH = 7;

let hatches = 0;

/** The hatching of a tone, made once a layer. @returns what fills with it */
function hatch(g: Group, tone: Tone): string {
  const defs = child(g, "defs", "hatches");
  const found = defs.select<SVGPatternElement>(`pattern.tone-${tone}`);
  if (!found.empty()) return `url(#${found.attr("id")})`;
  const id = `chart-hatch-${++hatches}`;
  defs
    .append("pattern")
    .put("id", id)
    .put("class", `tone-${tone}`)
    .put("width", PITCH)
    .put("height", PITCH)
    .put("patternUnits", "userSpaceOnUse")
    .put("patternTransform", "rotate(45)")
    .append("line")
    .put("class", "chart-hatch")
    .put("y2", PITCH);
  return `url(#${id})`;
}

/** Hatched parts of the plot; one that also has an edge can be distinguished without colour. */
export function regions(g: Group, data: readonly Region[], { at }: Ground): void {
  g.selectAll<SVGPathElement, Region>(":scope > path")
    .data(data, (region) => region.key)
    .join("path")
    .put("class", (region) => `chart-region tone-${region.tone}`)
    .put("fill", (region) => hatch(g, region.tone))
    .put("d", (region) => outlinePath(region.outline, at));
}
