export interface Spot {
  readonly key: string;
  /** on the drawing [px] */
  readonly x: number;
  readonly y: number;
}

/** @returns the spot nearest to a pointer within `reach` pixels, or null */
export function nearestSpot(
  spots: readonly Spot[],
  at: { readonly x: number; readonly y: number },
  reach: number,
): Spot | null {
  let found: Spot | null = null;
  let least = reach * reach;
  for (const spot of spots) {
    const distance = (spot.x - at.x) ** 2 + (spot.y - at.y) ** 2;
    if (distance > least) continue;
    least = distance;
    found = spot;
  }
  return found;
}

const STEPS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/**
 * Where a key leads from one spot: the arrows to the neighbours from left to right, Home and End to the ends.
 *
 * @returns the key of the next spot, null where the pressed key leads nowhere
 */
export function spotByKey(spots: readonly Spot[], current: string | null, pressed: string): string | null {
  const order = [...spots].sort((a, b) => a.x - b.x || a.y - b.y);
  if (order.length === 0) return null;
  if (pressed === "Home") return order[0].key;
  if (pressed === "End") return order[order.length - 1].key;
  const step = STEPS[pressed];
  if (step === undefined) return null;
  const at = order.findIndex((spot) => spot.key === current);
  if (at < 0) return order[step > 0 ? 0 : order.length - 1].key;
  return order[Math.min(order.length - 1, Math.max(0, at + step))].key;
}
