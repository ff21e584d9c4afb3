import { useState } from "preact/hooks";
import type { Drawn } from "../picture.ts";
import { spotByKey } from "./spots.ts";
import { Tooltip } from "./Tooltip.tsx";
import { useGestures } from "./useGestures.ts";
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

export interface ReaderProps {
  readonly drawn: Drawn;
  readonly reading: Reading;
  /** which chart it is */
  readonly name: string;
  readonly zoom: Zoom | null;
}

/** How near a pointer must come [px]; a thumb is less sure than a mouse. */
const REACH: Readonly<Record<string, number>> = { mouse: 18, pen: 22, touch: 32 };

const reachOf = ({ pointerType }: PointerEvent): number => REACH[pointerType] ?? REACH.mouse;

/** What a notch of the wheel brings nearer with Control held, or a trackpad's pinch. */
const WHEEL = 1.2;

function placeOf(event: MouseEvent) {
  const box = (event.currentTarget as Element).getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

const inPlot = ({ x, y }: { x: number; y: number }, { layout: { margin } }: Zoom) => ({
  x: x - margin.left,
  y: y - margin.top,
});

/**
 * Reads a chart aloud and beside the pointer. One stop of the tab key; the arrows go from place to place,
 * Enter or a click chooses the one that is read, Escape leaves it.
 */
export function Reader({ drawn, reading, name, zoom }: ReaderProps) {
  const [active, setActive] = useState<string | null>(null);
  const gestures = useGestures(zoom);
  const spots = active === null ? [] : drawn.spots();
  const chosen = reading.chosen ? drawn.spots().find(({ key }) => key === reading.chosen) : undefined;
  const at = spots.findIndex(({ key }) => key === active);
  const lines = at < 0 || active === null ? [] : reading.describe(active);
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
  return (
    <>
      <div
        class={zoom?.zoomed ? "chart-reader zoomed" : "chart-reader"}
        role="slider"
        tabIndex={0}
        aria-label={`${reading.label}, ${name}. Arrow keys go from one to the next${reading.onChoose ? ", Enter chooses one" : ""}.`}
        aria-valuemin={1}
        aria-valuemax={Math.max(1, active === null ? drawn.count : spots.length)}
        aria-valuenow={Math.max(0, at) + 1}
        aria-valuetext={at < 0 ? `${drawn.count} to read` : lines.join(", ")}
        onPointerMove={(event) => {
          if (!gestures.move(event)) read(under(event));
        }}
        onPointerDown={(event) => {
          gestures.down(event);
          read(under(event));
        }}
        onPointerUp={(event) => {
          const dragged = gestures.up(event);
          const key = dragged || event.button !== 0 ? null : under(event);
          if (key !== null) reading.onChoose?.(key);
        }}
        onPointerCancel={gestures.stop}
        onWheel={(event) => {
          if (!zoom || !event.ctrlKey) return;
          event.preventDefault();
          zoom.nearer(event.deltaY < 0 ? WHEEL : 1 / WHEEL, inPlot(placeOf(event), zoom));
        }}
        onPointerLeave={(event) => {
          if (event.pointerType === "mouse") read(null);
        }}
        onFocus={(event) => event.currentTarget.matches(":focus-visible") && begin()}
        onBlur={() => read(null)}
        onKeyDown={press}
      />
      {chosen && <div class="chart-chosen" style={{ left: `${chosen.x}px`, top: `${chosen.y}px` }} />}
      {gestures.box && <div class="chart-box" style={gestures.box} />}
      {at >= 0 && <Tooltip spot={spots[at]} hairline={drawn.hairline?.(spots[at]) ?? null} lines={lines} />}
    </>
  );
}

const CHOOSES = ["Enter", " "];

function actionOf(reading: Reading, key: string): ((key: string) => void) | undefined {
  return reading.keys?.[key.toLowerCase()] ?? (CHOOSES.includes(key) ? reading.onChoose : undefined);
}
