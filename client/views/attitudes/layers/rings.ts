import type { Group } from "../../../charts/frame.ts";
import type { Rose } from "../rose.ts";
import type { Sector } from "../sectors.ts";
import { STATES, type State } from "../stand.ts";
import { arcPath, type PolarContext } from "./polar.ts";

/** How far outside the rim each ring of sectors runs [px]. */
export const RING: Readonly<Record<State, number>> = { parked: 7, driving: 15 };
/** Between neighbouring sectors [°]. */
const SPLIT = 0.5;

interface Arc extends Sector {
  readonly state: State;
}

/** Two rings round the rim: which mode governs where, parked inside, driving outside. */
export function ringsLayer(g: Group, { sectors }: Rose, { radius }: PolarContext): void {
  const arcs: Arc[] = STATES.flatMap((state) => sectors[state].map((sector) => ({ ...sector, state })));
  g.selectAll<SVGPathElement, Arc>("path")
    .data(arcs, (each) => `${each.state} ${each.mode} ${each.from}`)
    .join("path")
    .attr("class", (each) => `rose-ring ring-${each.mode ?? "none"}`)
    .attr("d", ({ state, from, to }) => {
      const gap = Math.min(SPLIT, (to - from) / 4);
      return arcPath(radius + RING[state], from + gap, to - gap);
    });
}
