import type { PolarPlot } from "../../model/polar.ts";
import type { ChartSize } from "../../size.ts";
import type { Margin } from "../frame.ts";
import type { Ground } from "../ground.ts";
import { isWide } from "../layout.ts";
import { type Scale, scaleOf } from "../scales.ts";

/** Left of the straight side stand the numbers; above and below names of ceiling and floor [px]. */
const [LEFT, EDGE] = [52, 42];
/** Least room right of the rim for names [px]. */
const BESIDE = { wide: 230, narrow: 156 } as const;
/** Radius that a narrow picture has at most, and any at most [px]; in between a share of the width. */
const [SHORT, LONG] = [255, 430];
const SHARE = 0.38;
const LEAST = 80;
/** Names in the half disc keep off its rim by so much [px]. */
const INSET = 6;
/** What is drawn on the rim belongs to the plot [px]. */
const ON_RIM = 0.5;

const RADIAN = Math.PI / 180;

/** @returns radius of the half disc in a picture of that width [px] */
export function polarRadius(width: number): number {
  const room = width - LEFT - (isWide(width) ? BESIDE.wide : BESIDE.narrow);
  return Math.max(LEAST, Math.min(room, LONG, Math.max(SHORT, SHARE * width)));
}

/** @returns height that the half disc takes in a picture of that width [px] */
export function polarHeight(width: number): number {
  return Math.round(2 * (polarRadius(width) + EDGE));
}

/** A polar chart at a size: a half disc whose box's top left corner is the plot's origin. */
export interface PolarLayout extends Ground {
  readonly size: ChartSize;
  readonly margin: Margin;
  /** of the rim [px] */
  readonly radius: number;
  /** distance from the centre, in the axis' unit, to [px] */
  readonly r: Scale;
  /** room right of the rim for names [px] */
  readonly beside: number;
  /** a place at an angle [°] and a distance from the centre [px] */
  readonly spot: (angle: number, distance: number) => [x: number, y: number];
}

/** @returns the chart's half disc and its scale at a size */
export function polarLayout(plot: PolarPlot, size: ChartSize): PolarLayout {
  const radius = polarRadius(size.width);
  const r = scaleOf({ from: 0, to: plot.axis.to }, [0, radius]);
  const spot = (angle: number, distance: number): [number, number] => [
    distance * Math.sin(angle * RADIAN),
    radius + distance * Math.cos(angle * RADIAN),
  ];
  const far = (x: number, y: number) => Math.hypot(x, y - radius);
  return {
    size,
    margin: { top: EDGE, bottom: EDGE, left: LEFT, right: Math.max(0, size.width - LEFT - radius) },
    radius,
    r,
    beside: size.width - LEFT - radius,
    spot,
    width: radius,
    height: 2 * radius,
    at: (angle, value) => spot(angle, value <= plot.axis.to ? r(value) : Number.NaN),
    wide: isWide(size.width),
    motion: 0,
    shows: (x, y) => x >= -ON_RIM && far(x, y) <= radius + ON_RIM,
    holds: ({ x, y, width, height }) =>
      x >= 0 && Math.max(far(x + width, y), far(x + width, y + height)) <= radius - INSET,
  };
}

/** @returns path of an arc about the centre, from one angle to another */
export function arcPath({ spot }: PolarLayout, distance: number, from: number, to: number): string {
  return `M${spot(from, distance)}A${distance},${distance} 0 0 0 ${spot(to, distance)}`;
}
