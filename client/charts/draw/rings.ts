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
    .join((enter) => enter.append("circle").put("cx", x).attr("cy", y))
    .put("class", (ring) => `chart-ring ${ring.look}${ring.letter ? " lettered" : ""}`)
    .put("r", (ring) => (ring.letter ? LETTERED : PLAIN))
    .order();
  glide(circles, motion, { cx: x, cy: y });
  g.selectAll<SVGTextElement, Ring>("text")
    .data(
      seen.filter((ring) => ring.letter),
      (ring) => ring.key,
    )
    .join("text")
    .put("class", "chart-letter")
    .put("text-anchor", "middle")
    .put("x", x)
    .put("y", (ring) => y(ring) + LETTER_DROP)
    .say((ring) => ring.letter ?? "");
}
