import type { Sketch } from "./figures.ts";

const [WIDTH, HEIGHT, EDGE] = [72, 34, 2];

function span(values: readonly number[]): { readonly low: number; readonly room: number } {
  const low = Math.min(...values);
  return { low, room: Math.max(...values) - low || 1 };
}

/** A curve as small as a word: its shape alone, the figures stand beside it. */
export function SketchOf({ of, points }: Sketch) {
  const [x, y] = [span(points.map(([at]) => at)), span(points.map(([, at]) => at))];
  const place = ([a, b]: readonly [number, number]) => {
    const across = EDGE + ((a - x.low) / x.room) * (WIDTH - 2 * EDGE);
    const down = HEIGHT - EDGE - ((b - y.low) / y.room) * (HEIGHT - 2 * EDGE);
    return `${across.toFixed(1)},${down.toFixed(1)}`;
  };
  return (
    <svg
      class="part-sketch"
      width={WIDTH}
      height={HEIGHT}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Curve: ${of}`}
    >
      <path class="part-sketch-ground" d={`M${EDGE},0V${HEIGHT - EDGE}H${WIDTH}`} />
      <path class="part-sketch-curve" d={`M${points.map(place).join("L")}`} />
    </svg>
  );
}
