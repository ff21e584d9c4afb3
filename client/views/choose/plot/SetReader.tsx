import { useEffect, useRef, useState } from "preact/hooks";
import { ApiError, api } from "../../../state/api.ts";
import type { ChosenSet } from "../answers.ts";
import { jobPath } from "../state/job.ts";
import { nearestSpot, type Spot, spotByKey } from "./neighbour.ts";

export interface SetReaderProps {
  readonly job: string;
  /** where the points stand; the newest drawing's */
  readonly spots: () => readonly Spot[];
  /** what a point says at once, before its set is read */
  readonly brief: (index: number) => string;
  /** what a set says: a line each */
  readonly describe: (set: ChosenSet) => readonly string[];
  /** the set that is looked at, where the arrows begin */
  readonly looked: number | null;
  readonly onLook: (index: number) => void;
  readonly onPin: (index: number) => void;
  readonly label: string;
}

/** How near a pointer must come [px]; a thumb is less sure than a mouse. */
const REACH = { mouse: 14, pen: 18, touch: 28 } as const;
/** A pointer that rests so long asks for the set [ms]. */
const REST = 60;

const reachOf = ({ pointerType }: PointerEvent): number =>
  pointerType in REACH ? REACH[pointerType as keyof typeof REACH] : REACH.mouse;

/** The set under the pointer, read once it rests there; sets that were read are kept. */
function useSetAt(job: string, index: number | null): ChosenSet | null {
  const kept = useRef(new Map<string, ChosenSet>());
  const [, redraw] = useState(0);
  const key = `${job} ${index}`;
  useEffect(() => {
    if (index === null || kept.current.has(key)) return;
    const timer = setTimeout(() => {
      api.get<ChosenSet>(`${jobPath(job)}/set?index=${index}`).then(
        (set) => {
          kept.current.set(key, set);
          redraw((count) => count + 1);
        },
        (error: unknown) => {
          // The sentence about a server that is lost, or a job that is gone, stands above the plot.
          if (!(error instanceof ApiError)) throw error;
        },
      );
    }, REST);
    return () => clearTimeout(timer);
  }, [key]);
  return kept.current.get(key) ?? null;
}

/** Reads the plot's points: one stop of the tab key, arrows from point to point, Enter looks at one, P or a click pins it. */
export function SetReader(props: SetReaderProps) {
  const [spot, setSpot] = useState<Spot | null>(null);
  const set = useSetAt(props.job, spot?.index ?? null);
  const lines = spot ? (set ? props.describe(set) : [props.brief(spot.index)]) : [];
  const under = (event: PointerEvent) => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    return nearestSpot(props.spots(), event.clientX - box.left, event.clientY - box.top, reachOf(event));
  };
  const press = (event: KeyboardEvent) => {
    if (event.metaKey || event.ctrlKey || event.altKey) return;
    if (event.key === "Enter" && spot) props.onLook(spot.index);
    else if ((event.key === "p" || event.key === "P" || event.key === " ") && spot) props.onPin(spot.index);
    else {
      const next = spotByKey(props.spots(), spot, event.key);
      if (!next) return;
      setSpot(next);
    }
    event.preventDefault();
  };
  const begin = () => {
    const spots = props.spots();
    setSpot(spots.find(({ index }) => index === props.looked) ?? spotByKey(spots, null, "Home"));
  };
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would be a form */}
      <div
        class="choose-reader"
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the points are read by keyboard
        tabIndex={0}
        aria-label={`${props.label} Arrow keys go from point to point, Enter looks at one, P pins it.`}
        onPointerMove={(event) => setSpot(under(event))}
        onPointerLeave={() => setSpot(null)}
        onFocus={(event) => event.currentTarget.matches(":focus-visible") && begin()}
        onBlur={() => setSpot(null)}
        onKeyDown={press}
        onPointerUp={(event) => {
          const found = event.button === 0 ? under(event) : null;
          if (!found) return;
          props.onLook(found.index);
          if (event.pointerType === "mouse") props.onPin(found.index);
        }}
      />
      {spot && <Tooltip spot={spot} lines={lines} />}
      <p class="visually-hidden" aria-live="polite">
        {lines.join(". ")}
      </p>
    </>
  );
}

const OFFSET = 14;
const RIGHT_HALF = 0.55;

function Tooltip({ spot, lines }: { readonly spot: Spot; readonly lines: readonly string[] }) {
  const place = (element: HTMLDivElement | null) => {
    if (!element) return;
    const room = element.parentElement?.clientWidth ?? 0;
    const left = spot.x > room * RIGHT_HALF ? spot.x - OFFSET - element.offsetWidth : spot.x + OFFSET;
    element.style.left = `${Math.max(0, Math.min(left, room - element.offsetWidth))}px`;
    element.style.top = `${spot.y + OFFSET}px`;
  };
  const ring = (element: HTMLDivElement | null) => {
    if (!element) return;
    element.style.left = `${spot.x}px`;
    element.style.top = `${spot.y}px`;
  };
  return (
    <>
      <div class="choose-ring" ref={ring} />
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
