import { transition } from "d3";
import type { Group } from "../../../charts/frame.ts";

export interface PathMark {
  readonly key: string;
  readonly d: string;
  /** class of the path */
  readonly look: string;
  /** line style beyond its class: an svg dash pattern */
  readonly dash?: string;
}

/** Keyed paths that glide to their new place where `duration` asks for it. */
export function paths(
  g: Group,
  marks: readonly PathMark[],
  { duration }: { readonly duration: number },
): void {
  const joined = g
    .selectAll<SVGPathElement, PathMark>("path")
    .data(marks, (mark) => mark.key)
    .join((enter) => enter.append("path").attr("d", (mark) => mark.d))
    .attr("class", (mark) => mark.look)
    .attr("stroke-dasharray", (mark) => mark.dash ?? null)
    .order();
  if (duration > 0) joined.transition(transition().duration(duration)).attr("d", (mark) => mark.d);
  else joined.interrupt().attr("d", (mark) => mark.d);
}
