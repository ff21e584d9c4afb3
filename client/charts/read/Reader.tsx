import type { Drawn } from "../picture.ts";
import { Tooltip } from "./Tooltip.tsx";
import { type Reading, useReader } from "./useReader.ts";
import type { Zoom } from "./zoom.ts";

export interface ReaderProps {
  readonly drawn: Drawn;
  readonly reading: Reading;
  /** which chart it is */
  readonly name: string;
  readonly zoom: Zoom | null;
}

/**
 * Reads a chart aloud and beside the pointer. One stop of the tab key; the arrows go from place to place,
 * Enter or a click chooses the one that is read, Escape leaves it.
 */
export function Reader({ drawn, reading, name, zoom }: ReaderProps) {
  const { active, box, handlers } = useReader(drawn, reading, zoom);
  const spots = active === null ? [] : drawn.spots();
  const chosen = reading.chosen ? drawn.spots().find(({ key }) => key === reading.chosen) : undefined;
  const at = spots.findIndex(({ key }) => key === active);
  const lines = at < 0 || active === null ? [] : reading.describe(active);
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
        {...handlers}
      />
      {chosen && <div class="chart-chosen" style={{ left: `${chosen.x}px`, top: `${chosen.y}px` }} />}
      {box && <div class="chart-box" style={box} />}
      {at >= 0 && <Tooltip spot={spots[at]} hairline={drawn.hairline?.(spots[at]) ?? null} lines={lines} />}
    </>
  );
}
