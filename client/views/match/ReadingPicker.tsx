import type { Scale } from "../../charts/axes.ts";
import type { MeasuredPoint } from "./measured.ts";

interface Plot {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface ReadingPickerProps {
  /** "Measured readings, by flow" unless given */
  readonly label?: string;
  readonly points: readonly MeasuredPoint[];
  readonly plot: Plot;
  readonly scales: { readonly x: Scale; readonly y: Scale };
  readonly picked: number | null;
  readonly onPick: (index: number | null) => void;
}

/** A pointer this near picks a reading [px]. */
const REACH = 18;
const TOOLTIP_WIDTH = 260;

/** @returns places of the readings by rising flow; asked only when one is picked */
function byFlow(points: readonly MeasuredPoint[]): number[] {
  return points.map((_, i) => i).sort((a, b) => points[a].flow - points[b].flow);
}

function nearest({ points, scales }: ReadingPickerProps, x: number, y: number): number | null {
  let [best, least] = [-1, REACH];
  points.forEach((point, i) => {
    const distance = Math.hypot(scales.x(point.flow) - x, scales.y(point.pressure) - y);
    if (distance < least) [best, least] = [i, distance];
  });
  return best < 0 ? null : best;
}

function moved(key: string, at: number, count: number): number | null {
  switch (key) {
    case "ArrowRight":
    case "ArrowUp":
      return Math.min(count - 1, at + 1);
    case "ArrowLeft":
    case "ArrowDown":
      return Math.max(0, at - 1);
    case "Home":
      return 0;
    case "End":
      return count - 1;
    default:
      return null;
  }
}

/** @returns what a reading said before it was carried to the shown speed, as tooltip and screen reader say it */
export function readingWords(point: MeasuredPoint): string {
  const aside = point.setAside === null ? "" : ` Set aside: ${point.setAside}`;
  return `Read: ${point.read} (${point.test}).${aside}`;
}

/** Lies over the plot: the pointer picks the nearest reading, the arrow keys step through them by flow. */
export function ReadingPicker(props: ReadingPickerProps) {
  const { points, plot, picked, onPick, scales } = props;
  const rank = picked === null ? 0 : byFlow(points).indexOf(picked);
  const point = picked === null ? null : points[picked];
  const atPointer = (event: PointerEvent) => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    onPick(nearest(props, event.clientX - box.left, event.clientY - box.top));
  };
  return (
    <>
      <div
        class="reading-picker"
        style={{
          left: `${plot.left}px`,
          top: `${plot.top}px`,
          width: `${plot.width}px`,
          height: `${plot.height}px`,
        }}
        role="slider"
        tabIndex={0}
        aria-label={props.label ?? "Measured readings, by flow"}
        aria-valuemin={1}
        aria-valuemax={points.length}
        aria-valuenow={rank + 1}
        aria-valuetext={
          point ? `${rank + 1} of ${points.length}. ${readingWords(point)}` : `${points.length} readings`
        }
        onPointerMove={atPointer}
        onPointerDown={atPointer}
        onPointerLeave={() => onPick(null)}
        onFocus={(event) =>
          event.currentTarget.matches(":focus-visible") && onPick(byFlow(points)[0] ?? null)
        }
        onBlur={() => onPick(null)}
        onKeyDown={(event) => {
          if (event.key === "Escape") return onPick(null);
          const to = moved(event.key, picked === null ? -1 : rank, points.length);
          if (to === null) return;
          event.preventDefault();
          onPick(byFlow(points)[to] ?? null);
        }}
      />
      {point && (
        <div
          class="chart-tooltip"
          role="status"
          style={{
            left: `${Math.max(0, Math.min(plot.left + scales.x(point.flow) + 12, plot.left + plot.width - TOOLTIP_WIDTH))}px`,
            top: `${plot.top + scales.y(point.pressure) + 14}px`,
          }}
        >
          {readingWords(point)}
        </div>
      )}
    </>
  );
}
