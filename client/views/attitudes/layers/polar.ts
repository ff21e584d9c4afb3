import type { ScaleLinear } from "d3";

/** The half disc's ground: its centre is the plot's origin, floor below, wall to the right, ceiling above. */
export interface PolarContext {
  /** pull [N] to distance from the centre [px] */
  readonly r: ScaleLinear<number, number>;
  /** of the rim [px] */
  readonly radius: number;
  /** room right of the rim for labels [px] */
  readonly beside: number;
}

const RADIAN = Math.PI / 180;

/** @returns where an attitude lies at a distance from the centre [px] */
export function spot(angle: number, radius: number): [x: number, y: number] {
  return [radius * Math.sin(angle * RADIAN), radius * Math.cos(angle * RADIAN)];
}

/** @returns path of an arc of the half disc, from one attitude to another */
export function arcPath(radius: number, from: number, to: number): string {
  const [x0, y0] = spot(from, radius);
  const [x1, y1] = spot(to, radius);
  return `M${x0},${y0}A${radius},${radius} 0 0 0 ${x1},${y1}`;
}
