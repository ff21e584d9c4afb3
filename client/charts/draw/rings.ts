import type { Ring } from "../model/plot.ts";
import type { Group } from "./frame.ts";
import { glide } from "./glide.ts";
import type { Ground } from "./ground.ts";

const [PLAIN, LETTERED] = [6, 9];
/** From the middle of a letter to its baseline [px]. */
const LETTER_DROP = 4.8;

/** Computed points as rings, one with a letter where another build is meant. */
export function rings(g: Group, data: readonly Ring[], { at, motion, shows }: Ground): void {
  const seen = data.filter((ring) => shows(...at(ring.x, ring.y)));
  const x = (ring: Ring) => at(ring.x, ring.y)[0];
  const y = (ring: Ring) => at(ring.x, ring.y)[1];
  const circles = g
    .selectAll<SVGCircleElement, Ring>("circle")
    .data(seen, (ring) => ring.key)
    .join((enter) => enter.append("circle").attr("cx", x).attr("cy", y))
    .attr("class", (ring) => `chart-ring ${ring.look}${ring.letter ? " lettered" : ""}`)
    .attr("r", (ring) => (ring.letter ? LETTERED : PLAIN))
    .order();
  glide(circles, motion, { cx: x, cy: y });
  g.selectAll<SVGTextElement, Ring>("text")
    .data(
      seen.filter((ring) => ring.letter),
      (ring) => ring.key,
    )
    .join("text")
    .attr("class", "chart-letter")
    .attr("text-anchor", "middle")
    .attr("x", x)
    .attr("y", (ring) => y(ring) + LETTER_DROP)
    .text((ring) => ring.letter ?? "");
}
