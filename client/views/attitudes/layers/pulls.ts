import { arc, line } from "d3";
import type { Group } from "../../../charts/frame.ts";
import type { Rose } from "../rose.ts";
import type { Stand, State } from "../stand.ts";
import { arcPath, type PolarContext, spot } from "./polar.ts";

interface Mark {
  readonly key: string;
  readonly look: string;
  readonly d: string;
}

/** A closed curve from the centre and back to it; it breaks off where it runs over the rim. */
function needPath(stands: readonly Stand[], state: State, { r }: PolarContext): string {
  const [, rim] = r.domain();
  const drawn = line<Stand>(
    (stand) => spot(stand.angle, r(stand[state].pull))[0],
    (stand) => spot(stand.angle, r(stand[state].pull))[1],
  ).defined((stand) => stand[state].pull <= rim)(stands);
  return drawn ? `M0,0${drawn.replace(/^M/, "L")}L0,0` : "";
}

function bandPath({ spread }: Rose, { r }: PolarContext): string {
  if (!spread) return "";
  const shape = {
    innerRadius: r(spread.less),
    outerRadius: r(spread.more),
    startAngle: 0,
    endAngle: Math.PI,
  };
  return arc()(shape) ?? "";
}

/** The pull made as an arc with its spread, the pull needed as two curves. */
export function pullsLayer(g: Group, rose: Rose, context: PolarContext): void {
  const marks: Mark[] = [
    { key: "band", look: "rotor-ribbon", d: bandPath(rose, context) },
    { key: "parked", look: "rose-need rose-parked", d: needPath(rose.stands, "parked", context) },
    { key: "driving", look: "rose-need rose-driving", d: needPath(rose.stands, "driving", context) },
    { key: "made", look: "rotor-line", d: rose.made > 0 ? arcPath(context.r(rose.made), 0, 180) : "" },
  ];
  g.selectAll<SVGPathElement, Mark>("path")
    .data(marks, (mark) => mark.key)
    .join("path")
    .attr("class", (mark) => mark.look)
    .attr("d", (mark) => mark.d);
}
