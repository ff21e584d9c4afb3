import type { RimName } from "../../model/polar.ts";
import type { Group } from "../frame.ts";
import { pushApart } from "../pushApart.ts";
import { BASELINE, clippedText, LINE_HEIGHT } from "../type.ts";
import type { PolarLayout } from "./layout.ts";
import { ringOffset } from "./rim.ts";

/** Names stand this far outside the rim, and so far behind their hairline [px]. */
const [AWAY, BEFORE_TEXT] = [32, 3];

interface Placed extends RimName {
  readonly x: number;
  readonly y: number;
}

function placed(data: readonly RimName[], { radius, spot }: PolarLayout): Placed[] {
  const outer = radius + AWAY;
  const wanted = data.map(({ angle }) => ({ at: spot(angle, outer)[1], size: LINE_HEIGHT }));
  const centres = pushApart(wanted, radius - outer, radius + outer);
  return data.map((name, i) => {
    const nearest = Math.max(0, Math.abs(centres[i] - radius) - LINE_HEIGHT / 2);
    return { ...name, y: centres[i], x: Math.sqrt(Math.max(0, outer ** 2 - nearest ** 2)) };
  });
}

function textOf({ title, tail, more, strong, x }: Placed, { radius, beside, wide }: PolarLayout): string {
  const end = wide ? `${tail}${more ?? ""}` : tail;
  return clippedText(`${title}${end}`, end, radius + beside - x - BEFORE_TEXT, strong);
}

/** Names round the rim, pushed apart, each led to its angle by a hairline. */
export function rimNames(g: Group, data: readonly RimName[], layout: PolarLayout): void {
  const names = placed(data, layout);
  g.selectAll<SVGPathElement, Placed>(".leader")
    .data(names, ({ key }) => key)
    .join("path")
    .put("class", "leader")
    .put(
      "d",
      ({ angle, ring, x, y }) => `M${layout.spot(angle, layout.radius + ringOffset(ring))}L${x},${y}`,
    );
  g.selectAll<SVGTextElement, Placed>("text")
    .data(names, ({ key }) => key)
    .join("text")
    .put("class", ({ tone, strong }) => `chart-label tone-${tone}${strong ? " strong" : ""}`)
    .put("x", ({ x }) => x + BEFORE_TEXT)
    .put("y", ({ y }) => y + BASELINE)
    .say((name) => textOf(name, layout));
}
