/** A point of the plot where it is drawn. */
export interface Spot {
  readonly index: number;
  /** [px] */
  readonly x: number;
  readonly y: number;
}

/** @returns the spot nearest to a place within `reach` pixels, or null */
export function nearestSpot(spots: readonly Spot[], x: number, y: number, reach: number): Spot | null {
  let found: Spot | null = null;
  let least = reach * reach;
  for (const spot of spots) {
    const distance = (spot.x - x) ** 2 + (spot.y - y) ** 2;
    if (distance > least) continue;
    least = distance;
    found = spot;
  }
  return found;
}

const DIRECTIONS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowDown: [0, 1],
  ArrowUp: [0, -1],
};
/** A step sideways counts so many times a step ahead. */
const SIDEWAYS = 2;
/** Nearer than this, points lie on one another [px]. */
const SAME_PLACE = 0.5;

/**
 * Where a key leads from one point: an arrow to the nearest one in its direction, Home and End to the leftmost and rightmost.
 *
 * @returns the spot, null where the key leads nowhere
 */
export function spotByKey(spots: readonly Spot[], at: Spot | null, key: string): Spot | null {
  if (spots.length === 0) return null;
  if (key === "Home") return spots.reduce((best, spot) => (spot.x < best.x ? spot : best));
  if (key === "End") return spots.reduce((best, spot) => (spot.x > best.x ? spot : best));
  const direction = DIRECTIONS[key];
  if (!direction) return null;
  if (!at) return spots[0];
  let found: Spot | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const spot of spots) {
    const [dx, dy] = [spot.x - at.x, spot.y - at.y];
    const ahead = dx * direction[0] + dy * direction[1];
    const aside = Math.abs(dx * direction[1] + dy * direction[0]);
    const cost = ahead + SIDEWAYS * aside;
    if (ahead <= SAME_PLACE || cost >= least) continue;
    [found, least] = [spot, cost];
  }
  return found;
}
