import { requireNonNegative } from "../../numeric/errors.ts";
import type { Prepared } from "./prepare.ts";
import type { Objective } from "./result.ts";
import { columnOf, type Results, solvedCount } from "./values.ts";

/** Keys by index of which a smaller one comes first; what there is no number for comes last. */
function keysOf(prepared: Prepared, results: Results, { column, want }: Objective): Float64Array {
  const keys = columnOf(prepared, results, column);
  for (let i = 0; i < keys.length; i++)
    if (Number.isNaN(keys[i])) keys[i] = Number.POSITIVE_INFINITY;
    else if (want === "most") keys[i] = keys[i] === Number.POSITIVE_INFINITY ? -Number.MAX_VALUE : -keys[i];
    else if (keys[i] === Number.POSITIVE_INFINITY) keys[i] = Number.MAX_VALUE;
  return keys;
}

function everyIndex(results: Results): Uint32Array {
  const all = new Uint32Array(solvedCount(results));
  for (let i = 0; i < all.length; i++) all[i] = i;
  return all;
}

/** Sinks the entry at `at` in a heap whose root comes last. */
function sink(heap: Uint32Array, size: number, at: number, after: (a: number, b: number) => boolean): void {
  const moved = heap[at];
  let place = at;
  for (;;) {
    let child = 2 * place + 1;
    if (child >= size) break;
    if (child + 1 < size && after(heap[child + 1], heap[child])) child += 1;
    if (!after(heap[child], moved)) break;
    heap[place] = heap[child];
    place = child;
  }
  heap[place] = moved;
}

/** The first `count` of the combinations, in order, without sorting the rest. */
function firstOf(among: Uint32Array, count: number, keys: Float64Array): Uint32Array {
  const after = (a: number, b: number) => keys[a] > keys[b] || (keys[a] === keys[b] && a > b);
  const heap = among.slice(0, count);
  for (let at = (count >> 1) - 1; at >= 0; at--) sink(heap, count, at, after);
  for (let i = count; i < among.length; i++)
    if (after(heap[0], among[i])) {
      heap[0] = among[i];
      sink(heap, count, 0, after);
    }
  return heap.sort((a, b) => keys[a] - keys[b] || a - b);
}

/**
 * A page of the combinations, ranked by one column.
 *
 *     best first; equals by their index; combinations without a number last
 *
 * @param prepared - the question
 * @param results - solved combinations
 * @param by - column and what is wanted of it
 * @param page - places left out before it, and how many it holds [-]
 * @param among - indices to rank; every combination unless given
 * @returns indices of the page [-]
 * @throws {OutOfRangeError} on a page that can't be
 *
 * Valid for any column. A page near the top costs one pass over the combinations. Source: heap selection
 */
export function rankedPage(
  prepared: Prepared,
  results: Results,
  by: Objective,
  page: { readonly skip: number; readonly count: number },
  among: Uint32Array = everyIndex(results),
): Uint32Array {
  const skip = requireNonNegative("skip", page.skip);
  const until = Math.min(among.length, skip + requireNonNegative("count", page.count));
  return until <= skip
    ? new Uint32Array()
    : firstOf(among, until, keysOf(prepared, results, by)).subarray(skip);
}

/** @returns every combination, or those given, in the order of {@link rankedPage}: for whoever turns many pages */
export function rankedAll(
  prepared: Prepared,
  results: Results,
  by: Objective,
  among: Uint32Array = everyIndex(results),
): Uint32Array {
  const keys = keysOf(prepared, results, by);
  return among.slice().sort((a, b) => keys[a] - keys[b] || a - b);
}
