import type { Layout } from "../draw/layout.ts";
import type { Axis, Plot } from "../model/plot.ts";

/** A part of a plot that fills it, in the units of its axes. */
export interface Window {
  readonly x: readonly [from: number, to: number];
  readonly y: readonly [from: number, to: number];
}

/** A part of the plot [px]. */
export interface Part {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A part may not be smaller than this share of the whole axis. */
const LEAST_SHARE = 1e-3;
/** A part that covers the whole to this share is the whole. */
const WHOLE = 0.999;

/** One axis as a line on which it is even, and back. */
const even = (axis: Axis) =>
  axis.log ? { to: Math.log, back: Math.exp } : { to: (at: number) => at, back: (at: number) => at };

/** Shifts a span into the whole axis; one that is larger becomes the whole. */
function within([from, to]: readonly [number, number], axis: Axis): [number, number] {
  const line = even(axis);
  const [low, high] = [line.to(axis.from), line.to(axis.to)];
  const whole = high - low;
  const span = Math.min(whole, Math.max(LEAST_SHARE * whole, line.to(to) - line.to(from)));
  const start = Math.min(high - span, Math.max(low, line.to(from)));
  return [line.back(start), line.back(start + span)];
}

const covers = ([from, to]: readonly [number, number], axis: Axis) => {
  const line = even(axis);
  return line.to(to) - line.to(from) >= WHOLE * (line.to(axis.to) - line.to(axis.from));
};

/**
 * The part of a plot that lies under a part of its drawing, kept on the whole plot's axes.
 *
 * @param layout - of what is shown now
 * @returns null where it is the whole plot
 */
export function windowOf(
  whole: Pick<Plot, "x" | "y">,
  { x, y }: Pick<Layout, "x" | "y">,
  part: Part,
): Window | null {
  const along = within([x.invert(part.left), x.invert(part.right)], whole.x);
  const up = within([y.invert(part.bottom), y.invert(part.top)], whole.y);
  return covers(along, whole.x) && covers(up, whole.y) ? null : { x: along, y: up };
}

/** @returns the part of a plot a factor smaller about a place, which stays where it is [px] */
export function zoomedPart(
  { width, height }: Pick<Layout, "width" | "height">,
  factor: number,
  about: { readonly x: number; readonly y: number },
): Part {
  return {
    left: about.x - about.x / factor,
    right: about.x + (width - about.x) / factor,
    top: about.y - about.y / factor,
    bottom: about.y + (height - about.y) / factor,
  };
}

/** @returns the plot with its axes over a part of it */
export function inWindow(plot: Plot, part: Window | null): Plot {
  if (!part) return plot;
  const share = (at: number) => (at - plot.y.from) / (plot.y.to - plot.y.from);
  const right = plot.right && {
    ...plot.right,
    from: plot.right.from + share(part.y[0]) * (plot.right.to - plot.right.from),
    to: plot.right.from + share(part.y[1]) * (plot.right.to - plot.right.from),
  };
  return {
    ...plot,
    x: { ...plot.x, from: part.x[0], to: part.x[1] },
    y: { ...plot.y, from: part.y[0], to: part.y[1] },
    ...(right ? { right } : {}),
  };
}
