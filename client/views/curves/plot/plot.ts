/** What the charts of this view are made of: plain data in the units of the axes, no scale and no DOM in it. */
export interface Axis {
  /** quantity and unit: "flow, L/s" */
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly log?: boolean;
}

export type Tone = "rotor" | "leak" | "needed" | "ink" | "quiet";

export interface Band {
  readonly key: string;
  readonly tone: Tone;
  /** the mean's band is darker than the band for one more reading */
  readonly strength: "mean" | "prediction";
  readonly points: readonly { readonly x: number; readonly lo: number; readonly hi: number }[];
}

export interface Line {
  readonly key: string;
  readonly tone: Tone;
  /** solid within the tested range, dashed beyond it; dots for a comparison */
  readonly style: "solid" | "long" | "dashed" | "dots";
  readonly points: readonly { readonly x: number; readonly y: number }[];
  /** stands at the line's end */
  readonly label?: string;
}

/** Which reading of which test a mark on a chart stands for. */
export interface Source {
  readonly testId: string;
  readonly row: number;
}

export interface Mark extends Source {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  /** index into the shapes, one a test */
  readonly shape: number;
  readonly tone: Tone;
  readonly aside: boolean;
  readonly outlier: boolean;
}

/** A reading known only to lie between two bounds, across or along the chart. */
export interface Bracket extends Source {
  readonly key: string;
  readonly along: "x" | "y";
  /** the place on the other axis */
  readonly at: number;
  readonly lo: number;
  /** null where the test was stopped before: open upwards */
  readonly hi: number | null;
  readonly tone: Tone;
  readonly aside: boolean;
}

export interface ShapeLabel {
  readonly key: string;
  readonly shape: number;
  readonly text: string;
}

export interface Level {
  readonly key: string;
  readonly along: "x" | "y";
  readonly at: number;
  readonly tone: Tone;
  readonly label?: string;
}

export interface Strip {
  /** cut where it is too long */
  readonly title: string;
  /** never cut */
  readonly detail: string;
}

export interface Plot {
  readonly x: Axis;
  readonly y: Axis;
  readonly bands?: readonly Band[];
  readonly lines?: readonly Line[];
  readonly levels?: readonly Level[];
  readonly marks?: readonly Mark[];
  readonly brackets?: readonly Bracket[];
  /** one a test, in the order of the shapes */
  readonly shapes?: readonly ShapeLabel[];
  /** the names stand on the chart above; their room is kept, so that both charts share their x axis */
  readonly namedAbove?: boolean;
  /** names of the rows of a strip chart, from the top, in the place of numbers on the y axis */
  readonly strips?: readonly Strip[];
}

/** Room beyond the data, as a share of their span. */
const ROOM = 0.06;

/**
 * An axis that holds all values with a little room.
 *
 * @param values - in the unit shown; those that are not finite are left out
 * @param include - values that must be on it as well, such as 0
 */
export function axisOver(label: string, values: Iterable<number>, include: readonly number[] = []): Axis {
  const { lo, hi } = extent([...values, ...include]);
  const room = (hi - lo || Math.abs(hi) || 1) * ROOM;
  return {
    label,
    from: include.includes(lo) ? lo : lo - room,
    to: include.includes(hi) ? hi : hi + room,
  };
}

/** A logarithmic axis over positive values. */
export function logAxisOver(label: string, values: Iterable<number>): Axis {
  const { lo, hi } = extent([...values].filter((value) => value > 0));
  const factor = Math.max(1.15, (hi / lo) ** ROOM);
  return { label, from: lo / factor, to: hi * factor, log: true };
}

function extent(values: readonly number[]): { lo: number; hi: number } {
  let lo = Number.POSITIVE_INFINITY;
  let hi = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    lo = Math.min(lo, value);
    hi = Math.max(hi, value);
  }
  return lo <= hi ? { lo, hi } : { lo: 0.1, hi: 1 };
}
