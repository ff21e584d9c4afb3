import { useLayoutEffect, useRef } from "preact/hooks";
import type { Hairline } from "../picture.ts";
import type { Spot } from "./spots.ts";

const OFFSET = 14;
/** From this share of the width on the words stand left of what they speak of. */
const RIGHT_HALF = 0.55;

export interface TooltipProps {
  readonly spot: Spot;
  readonly hairline: Hairline | null;
  readonly lines: readonly string[];
}

/** What a place says of itself, beside it, with a ring or a hairline at the place. */
export function Tooltip({ spot, hairline, lines }: TooltipProps) {
  const words = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = words.current;
    if (!element) return;
    const room = element.parentElement?.clientWidth ?? 0;
    const left = spot.x > room * RIGHT_HALF ? spot.x - OFFSET - element.offsetWidth : spot.x + OFFSET;
    element.style.left = `${Math.max(0, Math.min(left, room - element.offsetWidth))}px`;
    element.style.top = `${spot.y + OFFSET}px`;
  });
  return (
    <>
      {hairline && <div class="chart-hairline" style={styleOf(hairline)} />}
      <div class="chart-cursor" style={{ left: `${spot.x}px`, top: `${spot.y}px` }} />
      {lines.length > 0 && (
        <div class="chart-tooltip" ref={words}>
          {lines.map((line, i) => (
            <div key={line} class={i === 0 ? "figure" : undefined}>
              {line}
            </div>
          ))}
        </div>
      )}
    </>
  );
}

/** The line as a box of no width, turned about its start. */
function styleOf({ from, to }: Hairline): Readonly<Record<string, string>> {
  const [right, down] = [to.x - from.x, to.y - from.y];
  return {
    left: `${from.x}px`,
    top: `${from.y}px`,
    height: `${Math.hypot(right, down)}px`,
    transform: `rotate(${Math.atan2(-right, down)}rad)`,
  };
}
