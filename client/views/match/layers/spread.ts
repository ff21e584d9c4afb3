import type { Quantiles, Uncertainty } from "../../../../shared/decide/uncertainty.ts";
import type { Group } from "../../../charts/frame.ts";
import type { MatchContext } from "./context.ts";

/** Half of a whisker's end [px]. */
const END = 4;

const known = ({ p5, p50, p95 }: Quantiles): readonly [number, number, number] | null =>
  p5 === null || p50 === null || p95 === null ? null : [p5, p50, p95];

/** Two whiskers that cross at the middle sample: flow along, pressure up. */
function whiskers(spread: Uncertainty["point"], { x, y }: MatchContext): string {
  const flow = spread && known(spread.flow);
  const pressure = spread && known(spread.pressure);
  if (!flow || !pressure) return "";
  const [left, middle, right] = flow.map(x);
  const [bottom, level, top] = pressure.map(y);
  return (
    `M${left},${level}H${right}M${left},${level - END}v${2 * END}M${right},${level - END}v${2 * END}` +
    `M${middle},${bottom}V${top}M${middle - END},${bottom}h${2 * END}M${middle - END},${top}h${2 * END}`
  );
}

/** The operating point's spread: 5 to 95 % of its samples, in flow and in pressure. */
export function spreadLayer(g: Group, spread: Uncertainty["point"], context: MatchContext): void {
  g.selectAll<SVGPathElement, string>("path")
    .data([whiskers(spread, context)])
    .join("path")
    .attr("class", "point-spread")
    .attr("d", (d) => d);
}
