import { useState } from "preact/hooks";
import { nearestSpot, type Spot, spotByKey } from "./nearest.ts";

export interface PointReaderProps {
  readonly spots: readonly Spot[];
  readonly describe: (key: string) => readonly string[];
  readonly chosen: string | null;
  readonly onChoose: (key: string) => void;
  /** what the keyboard's focus is told it stands on */
  readonly label: string;
}

/** How near a pointer must come [px]; a thumb is less sure than a mouse. */
const REACH = { mouse: 18, pen: 22, touch: 32 } as const;
const RIGHT_HALF = 0.55;

function reachOf(event: PointerEvent): number {
  return event.pointerType in REACH ? REACH[event.pointerType as keyof typeof REACH] : REACH.mouse;
}

/**
 * Reads a chart's points aloud and beside the pointer. One stop of the tab key; the arrows go from point to point, from left to right,
 * Enter or a click chooses the one that is read.
 */
export function PointReader({ spots, describe, chosen, onChoose, label }: PointReaderProps) {
  const [active, setActive] = useState<string | null>(null);
  const spot = spots.find((each) => each.key === active) ?? null;
  const under = (event: PointerEvent | MouseEvent, reach: number) => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    return nearestSpot(spots, { x: event.clientX - box.left, y: event.clientY - box.top }, reach);
  };
  const press = (event: KeyboardEvent) => {
    if ((event.key === "Enter" || event.key === " ") && active) onChoose(active);
    else {
      const next = spotByKey(spots, active, event.key);
      if (next === null) return;
      setActive(next);
    }
    event.preventDefault();
  };
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would be a form */}
      <div
        class="curves-reader"
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the points are read by keyboard
        tabIndex={0}
        aria-label={`${label} Arrow keys go from point to point, Enter chooses one.`}
        onPointerMove={(event) => setActive(under(event, reachOf(event))?.key ?? null)}
        onPointerLeave={() => setActive(null)}
        onFocus={(event) => {
          if (event.currentTarget.matches(":focus-visible"))
            setActive(chosen ?? spotByKey(spots, null, "Home"));
        }}
        onBlur={() => setActive(null)}
        onKeyDown={press}
        onClick={(event) => {
          const found = under(event, REACH.touch);
          if (found) onChoose(found.key);
        }}
      />
      {spot && <Tooltip spot={spot} lines={describe(spot.key)} />}
      <p class="visually-hidden" aria-live="polite">
        {active ? describe(active).join(", ") : ""}
      </p>
    </>
  );
}

const OFFSET = 14;

function Tooltip({ spot, lines }: { spot: Spot; lines: readonly string[] }) {
  const place = (element: HTMLDivElement | null) => {
    if (!element) return;
    const room = element.parentElement?.clientWidth ?? 0;
    const left = spot.x > room * RIGHT_HALF ? spot.x - OFFSET - element.offsetWidth : spot.x + OFFSET;
    element.style.left = `${Math.max(0, Math.min(left, room - element.offsetWidth))}px`;
    element.style.top = `${spot.y + OFFSET}px`;
  };
  return (
    <>
      <div class="curves-ring" ref={(element) => void (element && ringAt(element, spot))} />
      <div class="chart-tooltip" ref={place}>
        {lines.map((line, i) => (
          <div key={line} class={i === 0 ? "figure" : undefined}>
            {line}
          </div>
        ))}
      </div>
    </>
  );
}

function ringAt(element: HTMLDivElement, spot: Spot): void {
  element.style.left = `${spot.x}px`;
  element.style.top = `${spot.y}px`;
}
