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
 * @param from - narrowest gap to begin with [m], ≥ 0
 * @param to - widest gap to begin with [m]
 * @returns nodes by rising gap [m]
 * @throws {NoConvergenceError} where no gap has a density; never seen: where the grid does not settle
 *
 * Valid for densities that two nodes of the first grid don't hide between them. Source: plain bookkeeping
 */
export function gapGrid<T>(
  density: (gap: number) => { readonly log: number; readonly known: T },
  from: number,
  to: number,
): GapNode<T>[] {
  let [lo, hi] = [from, to];
  for (let pass = 0; pass < MOST_PASSES; pass += 1) {
    const gaps = Array.from({ length: NODES }, (_, i) => lo + ((hi - lo) * i) / (NODES - 1));
    const nodes = gaps.map((gap) => ({ gap, ...density(gap) }));
    const [first, last] = counting(nodes);
    const width = hi - lo;
    if (first === 0 && lo > 0) lo = Math.max(0, lo - width);
    else if (last === NODES - 1) hi += width;
    else if (last - first + 1 >= FILLED * NODES) return nodes;
    else [lo, hi] = [gaps[Math.max(0, first - 1)], gaps[last + 1]];
  }
  throw new NoConvergenceError("the grid over the gap did not settle", MOST_PASSES);
}

function counting(nodes: readonly { readonly log: number }[]): [number, number] {
  const peak = nodes.reduce((most, { log }) => Math.max(most, log), Number.NEGATIVE_INFINITY);
  if (peak === Number.NEGATIVE_INFINITY)
    throw new NoConvergenceError("no gap can give the forces that were measured", 0);
  const counts = ({ log }: { readonly log: number }) => log > peak - DROP;
  return [nodes.findIndex(counts), nodes.findLastIndex(counts)];
}
