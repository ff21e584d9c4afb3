import { scaleLinear } from "d3";
import type { ChartSize } from "../../charts/Chart.tsx";
import { chartFrame } from "../../charts/frame.ts";
import { groundLayer } from "./layers/ground.ts";
import { namesLayer } from "./layers/names.ts";
import type { PolarContext } from "./layers/polar.ts";
import { pullsLayer } from "./layers/pulls.ts";
import { rimLabelsLayer } from "./layers/rimLabels.ts";
import { ringsLayer } from "./layers/rings.ts";
import { spokesLayer } from "./layers/spokes.ts";
import type { Rose } from "./rose.ts";
import type { Stand } from "./stand.ts";

/** Left of the straight side stand the numbers; above and below labels of ceiling and floor [px]. */
const LEFT = 52;
const EDGE = 42;
/** Least room right of the rim for labels [px]. */
const BESIDE = { wide: 230, narrow: 156 } as const;
const WIDE = 560;
const SHARE = 0.38;
const [SHORT, LONG] = [255, 430];

/** @returns radius of the half disc in a picture of that width [px] */
export function roseRadius(width: number): number {
  const room = width - LEFT - (width >= WIDE ? BESIDE.wide : BESIDE.narrow);
  return Math.max(80, Math.min(room, LONG, Math.max(SHORT, SHARE * width)));
}

/** @returns height that the half disc takes in a picture of that width [px] */
export function roseHeight(width: number): number {
  return Math.round(2 * (roseRadius(width) + EDGE));
}

/** Draws the half-rose; called again with new data it changes what is there. */
export function drawRose(svg: SVGSVGElement, rose: Rose, asked: Stand | null, size: ChartSize): void {
  const radius = roseRadius(size.width);
  const margin = { top: EDGE + radius, right: 0, bottom: 0, left: LEFT };
  const frame = chartFrame(svg, { ...size, margin });
  const context: PolarContext = {
    r: scaleLinear([0, rose.rim], [0, radius]),
    radius,
    beside: size.width - LEFT - radius,
  };
  groundLayer(frame.layer("ground"), context);
  spokesLayer(frame.layer("spokes"), rose, asked, context);
  pullsLayer(frame.layer("pulls"), rose, context);
  ringsLayer(frame.layer("rings"), rose, context);
  rimLabelsLayer(frame.layer("rim-labels"), rose, asked, context);
  namesLayer(frame.layer("names"), rose, context);
}
