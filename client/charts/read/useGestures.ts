import { useRef, useState } from "preact/hooks";
import { movedPart, type Zoom } from "./zoom.ts";

interface Place {
  readonly x: number;
  readonly y: number;
}

/** A movement shorter than this is a click [px]. */
const CLICK = 6;

interface Gesture {
  readonly start: Place;
  /** fingers or the mouse's button that are down, where they are now */
  readonly down: ReadonlyMap<number, Place>;
}

export interface Gestures {
  readonly down: (event: PointerEvent) => void;
  /** @returns whether the movement was one of zooming, so that nothing is read */
  readonly move: (event: PointerEvent) => boolean;
  /** @returns whether something was dragged, so that nothing is chosen */
  readonly up: (event: PointerEvent) => boolean;
  readonly stop: () => void;
  /** the part that is being marked, as a style; null while none is */
  readonly box: Readonly<Record<"left" | "top" | "width" | "height", string>> | null;
}

const distance = (a: Place, b: Place) => Math.hypot(a.x - b.x, a.y - b.y);
const middle = (a: Place, b: Place): Place => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** @returns where an event happened within what listens to it [px] */
export function placeOf(event: MouseEvent): Place {
  const box = (event.currentTarget as Element).getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

/** Two fingers: what was between them comes nearer and goes along. */
function pinch({ layout, show }: Zoom, before: readonly Place[], now: readonly Place[]): void {
  const factor = distance(now[0], now[1]) / Math.max(1, distance(before[0], before[1]));
  const { left, top } = layout.margin;
  const [from, to] = [middle(before[0], before[1]), middle(now[0], now[1])];
  const edge = (end: number, was: number, is: number) => was + (end - is) / factor;
  show({
    left: edge(0, from.x - left, to.x - left),
    right: edge(layout.width, from.x - left, to.x - left),
    top: edge(0, from.y - top, to.y - top),
    bottom: edge(layout.height, from.y - top, to.y - top),
  });
}

/** Mouse: a box is marked in the whole plot, a part of it is moved. Fingers: two pinch. */
export function useGestures(zoom: Zoom | null): Gestures {
  const gesture = useRef<Gesture | null>(null);
  const [marked, mark] = useState<{ readonly from: Place; readonly to: Place } | null>(null);
  const stop = () => {
    gesture.current = null;
    mark(null);
  };
  const down = (event: PointerEvent) => {
    if (!zoom || event.button !== 0) return;
    const place = placeOf(event);
    const others = event.pointerType === "touch" ? (gesture.current?.down ?? []) : [];
    gesture.current = { start: place, down: new Map([...others, [event.pointerId, place]]) };
    if (event.pointerType === "mouse") (event.currentTarget as Element).setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent): boolean => {
    const held = gesture.current;
    const before = held?.down.get(event.pointerId);
    if (!zoom || !held || !before) return false;
    const place = placeOf(event);
    const now = new Map(held.down).set(event.pointerId, place);
    if (now.size === 2) pinch(zoom, [...held.down.values()], [...now.values()]);
    else if (event.pointerType !== "mouse" || distance(held.start, place) < CLICK) return false;
    else if (zoom.zoomed && !marked)
      zoom.show(movedPart(zoom.layout, before.x - place.x, before.y - place.y));
    else mark({ from: held.start, to: place });
    gesture.current = { ...held, down: now };
    return true;
  };
  const up = (event: PointerEvent): boolean => {
    const held = gesture.current;
    const dragged = held !== null && distance(held.start, placeOf(event)) >= CLICK;
    if (zoom && marked && dragged) {
      const { left, top } = zoom.layout.margin;
      const span = (a: number, b: number, off: number) =>
        [Math.min(a, b) - off, Math.max(a, b) - off] as const;
      const [x0, x1] = span(marked.from.x, marked.to.x, left);
      const [y0, y1] = span(marked.from.y, marked.to.y, top);
      zoom.show({ left: x0, right: x1, top: y0, bottom: y1 });
    }
    stop();
    return dragged;
  };
  return { down, move, up, stop, box: marked && boxOf(marked.from, marked.to) };
}

function boxOf(a: Place, b: Place): Gestures["box"] {
  return {
    left: `${Math.min(a.x, b.x)}px`,
    top: `${Math.min(a.y, b.y)}px`,
    width: `${Math.abs(a.x - b.x)}px`,
    height: `${Math.abs(a.y - b.y)}px`,
  };
}
