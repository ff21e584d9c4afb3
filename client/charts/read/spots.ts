/** Where something that can be read stands. */
export interface Spot {
  readonly key: string;
  /** on the drawing [px] */
  readonly x: number;
  readonly y: number;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

function least(
  spots: readonly Spot[],
  cost: (spot: Spot) => number,
  most = Number.POSITIVE_INFINITY,
): Spot | null {
  let found: Spot | null = null;
  let lowest = most;
  for (const spot of spots) {
    const price = cost(spot);
    if (!(price <= lowest)) continue;
    lowest = price;
    found = spot;
  }
  return found;
}

/** @returns the spot nearest to a pointer within `reach` pixels, or null */
export function nearestSpot(spots: readonly Spot[], at: Place, reach: number): Spot | null {
  return least(spots, (spot) => (spot.x - at.x) ** 2 + (spot.y - at.y) ** 2, reach * reach);
}

/** @returns the spot nearest to a pointer along the chart, however far above or below it */
export function nearestAlong(spots: readonly Spot[], at: Place): Spot | null {
  return least(spots, (spot) => Math.abs(spot.x - at.x));
}

/** A step sideways counts so many times a step ahead. */
const SIDEWAYS = 2;
/** Nearer than this, points lie on one another [px]. */
const SAME_PLACE = 0.5;

/** The nearest spot above (−1) or below (1). */
function upright(spots: readonly Spot[], from: Spot, direction: 1 | -1): Spot | null {
  return least(spots, (spot) => {
    const ahead = (spot.y - from.y) * direction;
    return ahead > SAME_PLACE ? ahead + SIDEWAYS * Math.abs(spot.x - from.x) : Number.NaN;
  });
}

const LONG_STEP = 10;
const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowLeft: -1,
  PageDown: LONG_STEP,
  PageUp: -LONG_STEP,
};

const ROW_STEPS: typeof STEPS = { ...STEPS, ArrowDown: 1, ArrowUp: -1 };

/** @returns spots from left to right, those above one another from the top */
export function inOrder(spots: readonly Spot[]): Spot[] {
  return [...spots].sort((a, b) => a.x - b.x || a.y - b.y);
}

/**
 * Where a key leads from one spot: left and right arrow to the neighbours from left to right, so that every spot is
 * reached; up and down to the nearest one there; Page Up and Down ten on; Home and End to the ends.
 *
 * @param order - spots as {@link inOrder} gives them, or row by row
 * @param rows - they stand below one another: up and down lead to the neighbours as well
 * @returns the key of the next spot, null where the pressed key leads nowhere
 */
export function spotByKey(
  order: readonly Spot[],
  current: string | null,
  pressed: string,
  rows = false,
): string | null {
  if (order.length === 0) return null;
  const last = order.length - 1;
  if (pressed === "Home") return order[0].key;
  if (pressed === "End") return order[last].key;
  const at = order.findIndex((spot) => spot.key === current);
  const step = (rows ? ROW_STEPS : STEPS)[pressed];
  if (step !== undefined) {
    if (at < 0) return order[step > 0 ? 0 : last].key;
    return order[Math.min(last, Math.max(0, at + step))].key;
  }
  if (pressed !== "ArrowUp" && pressed !== "ArrowDown") return null;
  if (at < 0) return order[0].key;
  return (upright(order, order[at], pressed === "ArrowDown" ? 1 : -1) ?? order[at]).key;
}
