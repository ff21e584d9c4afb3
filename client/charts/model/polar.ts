import type { Layers, Line } from "./plot.ts";

/** A straight line from the centre to the rim. */
export interface Spoke extends Pick<Line, "key" | "tone" | "style"> {
  /** "fine" unless said */
  readonly weight?: "fine" | "normal";
  /** [°] */
  readonly angle: number;
}

/** A stretch of a ring outside the rim. */
export interface Sector extends Pick<Line, "key" | "tone" | "style"> {
  /** "normal" unless said */
  readonly weight?: "fine" | "normal";
  /** [°] */
  readonly from: number;
  readonly to: number;
  /** which ring, counted from the rim outwards from 0 */
  readonly ring: number;
}

/** Words outside the rim, led to an angle. */
export interface RimName extends Pick<Line, "key" | "tone"> {
  /** cut where it is too long */
  readonly title: string;
  /** never cut */
  readonly tail: string;
  /** said after it where a chart is wide */
  readonly more?: string;
  readonly strong?: boolean;
  /** [°] */
  readonly angle: number;
  /** the ring of sectors that it names; null: the rim */
  readonly ring: number | null;
}

/**
 * A quantity over half a turn: 0° points down (the floor), 90° right (the wall), 180° up (the ceiling). In its layers
 * x is the angle [°] and y the distance from the centre in the unit of the axis.
 */
export interface PolarPlot extends Layers {
  /** from 0 in the centre to the rim */
  readonly axis: { readonly label: string; readonly to: number };
  readonly spokes: readonly Spoke[];
  readonly sectors: readonly Sector[];
  readonly rimNames: readonly RimName[];
}
