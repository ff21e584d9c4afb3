import { transition } from "d3";
import type { Point } from "../../../../shared/physics/predict.ts";
import type { Group } from "../../../charts/frame.ts";
import type { MatchContext } from "./context.ts";

const RING = 6;

interface Ring {
  readonly key: "point" | "ghost";
  readonly at: Pick<Point, "flow" | "pressure">;
}

/** The operating point as a ring, and where it stood before anything was tried. */
export function pointLayer(
  g: Group,
  data: { readonly point: Ring["at"] | null; readonly ghost: Ring["at"] | null },
  { x, y, duration }: MatchContext,
): void {
  const rings: Ring[] = [
    ...(data.ghost ? [{ key: "ghost", at: data.ghost } as const] : []),
    ...(data.point ? [{ key: "point", at: data.point } as const] : []),
  ];
  const joined = g
    .selectAll<SVGCircleElement, Ring>("circle")
    .data(rings, (ring) => ring.key)
    .join((enter) =>
      enter
        .append("circle")
        .attr("r", RING)
        .attr("cx", (ring) => x(ring.at.flow))
        .attr("cy", (ring) => y(ring.at.pressure)),
    )
    .attr("class", (ring) => (ring.key === "ghost" ? "ghost-ring" : "predicted"));
  const cx = (ring: Ring) => x(ring.at.flow);
  const cy = (ring: Ring) => y(ring.at.pressure);
  if (duration > 0) joined.transition(transition().duration(duration)).attr("cx", cx).attr("cy", cy);
  else joined.interrupt().attr("cx", cx).attr("cy", cy);
}
