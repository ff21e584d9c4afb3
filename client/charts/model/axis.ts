import type { Axis } from "./plot.ts";

/** Room beyond the data, as a share of their span. */
const ROOM = 0.06;

/**
 * An axis that holds all values with a little room.
 *
 * @param values - in the unit shown; those that are not finite are left out
 * @param include - values that must be on it as well, such as 0
 */
export function axisOver(label: string, values: Iterable<number>, include: readonly number[] = []): Axis {
  const { lo, hi } = extent([...values, ...include]);
  const room = (hi - lo || Math.abs(hi) || 1) * ROOM;
  return {
    label,
    from: include.includes(lo) ? lo : lo - room,
    to: include.includes(hi) ? hi : hi + room,
  };
}

/** A logarithmic axis over positive values. */
export function logAxisOver(label: string, values: Iterable<number>): Axis {
  const { lo, hi } = extent([...values].filter((value) => value > 0));
  const factor = Math.max(1.15, (hi / lo) ** ROOM);
  return { label, from: lo / factor, to: hi * factor, log: true };
}

function extent(values: readonly number[]): { lo: number; hi: number } {
  let lo = Number.POSITIVE_INFINITY;
  let hi = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    lo = Math.min(lo, value);
    hi = Math.max(hi, value);
  }
  return lo <= hi ? { lo, hi } : { lo: 0.1, hi: 1 };
}
