import type { Group } from "../../../charts/frame.ts";
import type { Rose } from "../rose.ts";
import type { Stand } from "../stand.ts";
import { type PolarContext, spot } from "./polar.ts";

interface Spoke {
  readonly key: string;
  readonly look: string;
  readonly stand: Stand;
}

interface Dot extends Spoke {
  readonly pull: number;
}

/** A spoke an attitude; the worst and the one asked about have a ring on the curve. */
export function spokesLayer(g: Group, rose: Rose, asked: Stand | null, { r, radius }: PolarContext): void {
  const spokes: Spoke[] = [
    ...rose.named.map(({ key, kind, stand }) => ({ key, look: `rose-spoke spoke-${kind}`, stand })),
    ...(asked ? [{ key: "asked", look: "rose-spoke spoke-asked", stand: asked }] : []),
  ];
  g.selectAll<SVGPathElement, Spoke>("path")
    .data(spokes, (spoke) => spoke.key)
    .join("path")
    .attr("class", (spoke) => spoke.look)
    .attr("d", (spoke) => `M0,0L${spot(spoke.stand.angle, radius)}`);
  const [, rim] = r.domain();
  const dots: Dot[] = spokes
    .filter((spoke) => spoke.key.startsWith("worst") || spoke.key === "asked")
    .map((spoke) => ({
      ...spoke,
      pull: spoke.stand[spoke.key === "worst" ? "parked" : "driving"].pull,
    }))
    .filter(({ pull }) => pull > 0 && pull <= rim);
  g.selectAll<SVGCircleElement, Dot>("circle")
    .data(dots, (dot) => dot.key)
    .join("circle")
    .attr("class", (dot) => (dot.key === "asked" ? "rose-asked-dot" : "predicted"))
    .attr("r", 5)
    .attr("cx", ({ stand, pull }) => spot(stand.angle, r(pull))[0])
    .attr("cy", ({ stand, pull }) => spot(stand.angle, r(pull))[1]);
}
