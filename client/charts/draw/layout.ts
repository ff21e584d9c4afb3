import type { Plot, Strip } from "../model/plot.ts";
import type { ChartSize } from "../size.ts";
import type { Margin } from "./frame.ts";
import type { Straight } from "./ground.ts";
import { type Scale, scaleOf } from "./scales.ts";
import { sideRoom } from "./sideLabels.ts";
import { clippedText, textWidth } from "./type.ts";

/** From this width on lines and tests are named beside the plot; below it a legend stands under the chart [px]. */
const WIDE = 560;

/** @returns whether a chart of that width has room for whole words */
export const isWide = (width: number): boolean => width >= WIDE;

const LEFT = 52;
/** Room that a right axis takes, before the labels begin [px]. */
const RIGHT_AXIS = 50;
const NO_LABELS = 14;
const [TOP, BOTTOM] = [30, 50];
const [STRIP_GAP, STRIP_TOP] = [14, 8];
/** Largest share of the width that names at the right, and names of strips at the left, may take. */
const SIDE_SHARE = { wide: 0.34, narrow: 0.27 } as const;
const STRIPS_SHARE = 0.44;

const stripText = ({ title, detail }: Strip) => (title === "" ? detail : `${title}, ${detail}`);

/** @returns a strip's name in the room that it has: its title gives way, its detail stays */
export function stripName({ title, detail }: Strip, room: number): string {
  if (title === "") return detail;
  const cut = clippedText(`${title}, ${detail}`, `, ${detail}`, room);
  return textWidth(cut) > room ? detail : cut;
}

/** A chart at a size: where its plot lies, and the scales of its axes. */
export interface Layout extends Straight {
  readonly size: ChartSize;
  readonly margin: Margin;
  /** room of the labels, and where it begins: right of the plot and its right axis [px] */
  readonly side: { readonly x: number; readonly room: number };
}

/** @returns room round the plot: axes, and labels at its right [px] */
export function marginOf(plot: Plot, width: number): Margin {
  const wide = isWide(width);
  const most = width * (wide ? SIDE_SHARE.wide : SIDE_SHARE.narrow);
  const axis = plot.right ? RIGHT_AXIS : 0;
  const labels = Math.min(sideRoom(plot, wide), most);
  const right = axis + labels || NO_LABELS;
  if (!plot.strips) return { top: TOP, right, bottom: BOTTOM, left: LEFT };
  const names = Math.max(0, ...plot.strips.map((strip) => textWidth(stripText(strip)))) + STRIP_GAP;
  return { top: STRIP_TOP, right, bottom: BOTTOM, left: Math.min(width * STRIPS_SHARE, names) };
}

/** What is drawn on the plot's edge belongs to it [px]. */
const EDGE = 0.5;

const atOf =
  (x: Scale, y: Scale): Straight["at"] =>
  (a, b) => [x(a), y(b)];

/** Layouts kept before they are forgotten. */
const MOST_KEPT = 32;
const kept = new Map<string, Layout>();

/** @returns the chart's plot and scales at a size, within a margin that others may share; the same object for the same axes */
export function layoutOf(plot: Plot, size: ChartSize, margin: Margin = marginOf(plot, size.width)): Layout {
  const { x, y, motion, right } = plot;
  const of = [x.from, x.to, x.log, y.from, y.to, y.log, motion, right !== undefined];
  const key = [...of, size.width, size.height, margin.top, margin.right, margin.bottom, margin.left].join(
    " ",
  );
  const found = kept.get(key);
  if (found) return found;
  if (kept.size >= MOST_KEPT) kept.clear();
  const made = laidOut(plot, size, margin);
  kept.set(key, made);
  return made;
}

function laidOut(plot: Plot, size: ChartSize, margin: Margin): Layout {
  const width = Math.max(1, size.width - margin.left - margin.right);
  const height = Math.max(1, size.height - margin.top - margin.bottom);
  const x = scaleOf(plot.x, [0, width]);
  const y = scaleOf(plot.y, [height, 0]);
  const off = plot.right ? RIGHT_AXIS : 0;
  return {
    size,
    margin,
    width,
    height,
    x,
    y,
    at: atOf(x, y),
    wide: isWide(size.width),
    motion: plot.motion ?? 0,
    shows: (px, py) => px >= -EDGE && px <= width + EDGE && py >= -EDGE && py <= height + EDGE,
    holds: () => true,
    side: { x: width + off, room: margin.right - off },
  };
}
