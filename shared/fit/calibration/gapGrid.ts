import { NoConvergenceError } from "../../numeric/errors.ts";

/** A gap of the grid [m], the logarithm of its density, and what is known with it. */
export interface GapNode<T> {
  readonly gap: number;
  readonly log: number;
  readonly known: T;
}

const NODES = 49;
/** Densities this far under the peak don't count: a normal one is there at six standard deviations. */
const DROP = 18;
/** A grid that is filled to this share is fine enough. */
const FILLED = 0.6;
const MOST_PASSES = 60;

/**
 * A grid over the gap that holds all of its density, and little else.
 *
 *     widened while an end still counts, narrowed to what counts until 60 % of the nodes do
 *
 * @param density - logarithm of the density at a gap [m], and what is known with it
 * @param rough - the same to a few tenths, at less cost, in search of the range [-]
 * @param from - narrowest gap to begin with [m], ≥ 0
 * @param to - widest gap to begin with [m]
 * @returns nodes by rising gap [m]
 * @throws {NoConvergenceError} where no gap has a density; never seen: where the grid does not settle
 *
 * Valid for densities that two nodes of the first grid don't hide between them. Source: plain bookkeeping
 */
export function gapGrid<T>(
  density: (gap: number) => { readonly log: number; readonly known: T },
  rough: (gap: number) => number,
  from: number,
  to: number,
): GapNode<T>[] {
  let range: Range = [from, to];
  for (let pass = 0; pass < MOST_PASSES; pass += 1) {
    const gaps = gapsOver(range);
    const next = nextRange(
      gaps,
      gaps.map((gap) => rough(gap)),
    );
    if (next) {
      range = next;
      continue;
    }
    const nodes = gaps.map((gap) => ({ gap, ...density(gap) }));
    const after = nextRange(
      gaps,
      nodes.map(({ log }) => log),
    );
    if (!after) return nodes;
    range = after;
  }
  throw new NoConvergenceError("the grid over the gap did not settle", MOST_PASSES);
}

type Range = readonly [number, number];

/** The last is the end itself, not a rounding beyond it: a law tabulated up to there would be made anew. */
const gapsOver = ([lo, hi]: Range): number[] =>
  Array.from({ length: NODES }, (_, i) => (i === NODES - 1 ? hi : lo + ((hi - lo) * i) / (NODES - 1)));

/** Null where the grid holds all that counts, and little else. */
function nextRange(gaps: readonly number[], logs: readonly number[]): Range | null {
  const [first, last] = counting(logs);
  const [lo, hi] = [gaps[0], gaps[NODES - 1]];
  const width = hi - lo;
  if (first === 0 && lo > 0) return [Math.max(0, lo - width), hi];
  if (last === NODES - 1) return [lo, hi + width];
  if (last - first + 1 >= FILLED * NODES) return null;
  return [gaps[Math.max(0, first - 1)], gaps[last + 1]];
}

function counting(logs: readonly number[]): [number, number] {
  const peak = logs.reduce((most, log) => Math.max(most, log), Number.NEGATIVE_INFINITY);
  if (peak === Number.NEGATIVE_INFINITY)
    throw new NoConvergenceError("no gap can give the forces that were measured", 0);
  const counts = (log: number) => log > peak - DROP;
  return [logs.findIndex(counts), logs.findLastIndex(counts)];
}
