import type { Group } from "../../../charts/frame.ts";
import { cavityPoint } from "../../../state/outcome.ts";
import type { Picture } from "../picture.ts";
import type { MatchContext } from "./context.ts";
import { curvePath } from "./curves.ts";
import { type PathMark, paths } from "./paths.ts";

export interface Overlay {
  readonly id: string;
  readonly name: string;
  /** "A", "B": stands in the ring and in the table */
  readonly letter: string;
  readonly dash: string;
  readonly picture: Picture;
}

/** Line styles of laid-over builds, told apart without colour. */
export const OVERLAY_DASHES = [
  "2 3",
  "12 3 2 3",
  "6 3",
  "14 4 2 4 2 4",
  "1 5",
  "18 6",
  "8 2 8 2 2 2",
] as const;

const RING = 8;

function overlayPoint({ picture }: Overlay) {
  return cavityPoint(picture.outcome);
}

/** Other builds: each in its own line style, its operating point with its letter. */
export function overlayLayer(g: Group, overlays: readonly Overlay[], context: MatchContext): void {
  const marks: PathMark[] = overlays.flatMap(({ id, dash, picture: { curves } }) => [
    { key: `fan ${id}`, d: curvePath(curves.rest, context), look: "overlay-fan", dash },
    { key: `leak ${id}`, d: curvePath(curves.leak, context), look: "overlay-leak", dash },
  ]);
  paths(g, marks, context);
  const points = overlays.filter((overlay) => overlayPoint(overlay) !== null);
  const at = (overlay: Overlay) => {
    const point = overlayPoint(overlay);
    return `translate(${context.x(point?.flow ?? 0)},${context.y(point?.pressure ?? 0)})`;
  };
  const rings = g
    .selectAll<SVGGElement, Overlay>("g.overlay-point")
    .data(points, (overlay) => overlay.id)
    .join((enter) => {
      const ring = enter.append("g").attr("class", "overlay-point");
      ring.append("circle").attr("r", RING);
      ring.append("text").attr("text-anchor", "middle").attr("dy", "0.35em");
      return ring;
    })
    .attr("transform", at);
  rings.select("text").text((overlay) => overlay.letter);
}
