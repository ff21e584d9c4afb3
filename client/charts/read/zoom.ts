import { useRef, useState } from "preact/hooks";
import type { Layout } from "../draw/layout.ts";
import type { Plot } from "../model/plot.ts";
import { inWindow, type Part, type Window, windowOf, zoomedPart } from "./window.ts";

/** Looking closer at a chart, by pointer, touch, keyboard and buttons. */
export interface Zoom {
  readonly zoomed: boolean;
  /** of what is shown */
  readonly layout: Layout;
  /** shows a part of what is shown [px] */
  readonly show: (part: Part) => void;
  /** brings a place of the drawing nearer by a factor, the middle where none is given [px] */
  readonly nearer: (factor: number, about?: { readonly x: number; readonly y: number }) => void;
  readonly whole: () => void;
  /** @returns whether the key was one of zooming */
  readonly key: (event: KeyboardEvent) => boolean;
}

const STEP = 1.5;
/** Share of the plot by which Shift and an arrow move it. */
const PAN = 0.2;
const DIRECTIONS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowDown: [0, 1],
  ArrowUp: [0, -1],
};

/** @returns the part of a plot that lies so many pixels to the right and below */
export function movedPart({ width, height }: Pick<Layout, "width" | "height">, dx: number, dy: number): Part {
  return { left: dx, right: width + dx, top: dy, bottom: height + dy };
}

/** More marks than this lie too close to be read without coming nearer. */
const DENSE = 30;

/** @returns whether a plot has so many readings that it can be zoomed */
export function isDense({ marks = [], brackets = [], strips }: Plot): boolean {
  return !strips && marks.length + brackets.length > DENSE;
}

/**
 * Lets a dense plot be looked at closer.
 *
 * @returns the plot as it is shown, and the zoom for a layout of it; null where it isn't dense
 */
export function useZoom(plot: Plot): { shown: Plot; zoomFor: (layout: Layout) => Zoom | null } {
  const [kept, keep] = useState<{ readonly of: string; readonly part: Window } | null>(null);
  const dense = isDense(plot);
  const axes = `${plot.x.label} ${plot.y.label}`;
  const part = dense && kept?.of === axes ? kept.part : null;
  const latest = useRef(plot);
  latest.current = plot;
  const zoomFor = (layout: Layout): Zoom => {
    const show = (shown: Part) => {
      const found = windowOf(latest.current, layout, shown);
      keep(found && { of: axes, part: found });
    };
    const middle = { x: layout.width / 2, y: layout.height / 2 };
    const nearer: Zoom["nearer"] = (factor, about = middle) => show(zoomedPart(layout, factor, about));
    const whole = () => keep(null);
    const key = (event: KeyboardEvent): boolean => {
      const direction = event.shiftKey ? DIRECTIONS[event.key] : undefined;
      if (event.key === "+" || event.key === "=") nearer(STEP);
      else if (event.key === "-") nearer(1 / STEP);
      else if (event.key === "0") whole();
      else if (direction && part)
        show(movedPart(layout, direction[0] * PAN * layout.width, direction[1] * PAN * layout.height));
      else return false;
      return true;
    };
    return { zoomed: part !== null, layout, show, nearer, whole, key };
  };
  return { shown: inWindow(plot, part), zoomFor: dense ? zoomFor : () => null };
}
