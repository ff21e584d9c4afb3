import { useState } from "preact/hooks";
import type { Drawn } from "../picture.ts";
import { spotByKey } from "./spots.ts";
import { type Gestures, placeOf, useGestures } from "./useGestures.ts";
import type { Zoom } from "./zoom.ts";

/** What a chart's reader says and does. */
export interface Reading {
  /** what a place says of itself, a line each */
  readonly describe: (key: string) => readonly string[];
  /** what can be read: "Readings" */
  readonly label: string;
  /** the place that was chosen before, where the arrows begin */
  readonly chosen?: string | null;
  readonly onChoose?: (key: string) => void;
  /** the place that is read now, for words that must be fetched first */
  readonly onRead?: (key: string | null) => void;
  /** what other keys do with the place that is read: "p" pins it */
  readonly keys?: Readonly<Record<string, (key: string) => void>>;
}

/** How near a pointer must come [px]; a thumb is less sure than a mouse. */
const REACH: Readonly<Record<string, number>> = { mouse: 18, pen: 22, touch: 32 };

const reachOf = ({ pointerType }: PointerEvent): number => REACH[pointerType] ?? REACH.mouse;

/** What a notch of the wheel brings nearer with Control held, or a trackpad's pinch. */
const WHEEL = 1.2;

const CHOOSES = ["Enter", " "];

const inPlot = ({ x, y }: { x: number; y: number }, { layout: { margin } }: Zoom) => ({
  x: x - margin.left,
  y: y - margin.top,
});

function wheel(event: WheelEvent, zoom: Zoom | null): void {
  if (!zoom || !event.ctrlKey) return;
  event.preventDefault();
  zoom.nearer(event.deltaY < 0 ? WHEEL : 1 / WHEEL, inPlot(placeOf(event), zoom));
}

function actionOf(reading: Reading, key: string): ((key: string) => void) | undefined {
  return reading.keys?.[key.toLowerCase()] ?? (CHOOSES.includes(key) ? reading.onChoose : undefined);
}

interface Read {
  /** the place under a pointer; null where none is within reach */
  readonly under: (event: PointerEvent) => string | null;
  readonly read: (key: string | null) => void;
  readonly choose: ((key: string) => void) | undefined;
}

/** What a pointer does: it reads what it is over, and chooses it unless it dragged. */
const pointerHandlers = (gestures: Gestures, { under, read, choose }: Read) => ({
  onPointerMove: (event: PointerEvent) => {
    if (!gestures.move(event)) read(under(event));
  },
  onPointerDown: (event: PointerEvent) => {
    gestures.down(event);
    read(under(event));
  },
  onPointerUp: (event: PointerEvent) => {
    const dragged = gestures.up(event);
    const key = dragged || event.button !== 0 ? null : under(event);
    if (key !== null) choose?.(key);
  },
  onPointerCancel: gestures.stop,
  onPointerLeave: (event: PointerEvent) => {
    if (event.pointerType === "mouse") read(null);
  },
});

/** The place of a chart that is read, and what pointer, wheel and keys do with it. */
export function useReader(drawn: Drawn, reading: Reading, zoom: Zoom | null) {
  const [active, setActive] = useState<string | null>(null);
  const gestures = useGestures(zoom);
  const read = (key: string | null) => {
    if (key === active) return;
    setActive(key);
    reading.onRead?.(key);
  };
  const under = (event: PointerEvent) => drawn.under(placeOf(event), reachOf(event))?.key ?? null;
  const press = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const act = active === null ? undefined : actionOf(reading, event.key);
    const next = spotByKey(drawn.spots(), active, event.key, drawn.order === "rows");
    if (event.key === "Escape") read(null);
    else if (zoom?.key(event)) gestures.stop();
    else if (act && active !== null) act(active);
    else if (next !== null) read(next);
    else return;
    event.preventDefault();
  };
  const begin = () => read(reading.chosen ?? spotByKey(drawn.spots(), null, "Home"));
  const handlers = {
    ...pointerHandlers(gestures, { under, read, choose: reading.onChoose }),
    onWheel: (event: WheelEvent) => wheel(event, zoom),
    onFocus: (event: { readonly currentTarget: Element }) =>
      event.currentTarget.matches(":focus-visible") && begin(),
    onBlur: () => read(null),
    onKeyDown: press,
  };
  return { active, box: gestures.box, handlers };
}
