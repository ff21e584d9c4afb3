import type { Contour } from "../model/field.ts";
import type { Group } from "./frame.ts";
import { tenths } from "./path.ts";

const pathOf = ({ rings }: Contour) =>
  rings.map((ring) => `M${ring.map(([x, y]) => `${tenths(x)},${tenths(y)}`).join("L")}Z`).join("");

/** Share of the tone over the paper above the last step [-]. */
const DARKEST = 0.5;

/** Tints that grow evenly from step to step, each bounded by its contour line. */
export function field(g: Group, drawn: readonly Contour[]): void {
  const share = (i: number) => (DARKEST * i) / Math.max(1, drawn.length);
  g.selectAll<SVGPathElement, Contour>("path")
    .data(drawn, ({ step }) => step)
    .join("path")
    .put("class", "chart-field")
    // tints lie on one another: each adds what is left to its own share
    .put("fill-opacity", (_, i) => (share(i + 1) - share(i)) / (1 - share(i)))
    .put("d", pathOf);
}
