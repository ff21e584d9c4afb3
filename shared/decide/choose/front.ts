import { OutOfRangeError } from "../../numeric/errors.ts";
import { type Chunk, FLAG } from "./columns.ts";
import type { Prepared } from "./prepare.ts";
import type { Objective } from "./result.ts";
import { columnAt, columnOf, meetingCombinations, type Results } from "./values.ts";

const MOST_OBJECTIVES = 3;

/** Values of the second and third objective of which none dominates another: the second falls, the third rises. */
interface Staircase {
  readonly second: number[];
  readonly third: number[];
}

/** @returns first step whose second value is not above y */
function stepOf({ second }: Staircase, y: number): number {
  let [lo, hi] = [0, second.length];
  while (lo < hi) {
    const middle = (lo + hi) >> 1;
    if (second[middle] > y) lo = middle + 1;
    else hi = middle;
  }
  return lo;
}

/** Whether a step has as much or more of both. */
function isCovered(stairs: Staircase, y: number, z: number): boolean {
  const at = stepOf(stairs, y);
  const { second, third } = stairs;
  return (at < second.length && second[at] === y && third[at] >= z) || (at > 0 && third[at - 1] >= z);
}

/** Adds a step and takes away those that it covers. */
function addStep(stairs: Staircase, y: number, z: number): void {
  const { second, third } = stairs;
  const at = stepOf(stairs, y);
  let behind = at;
  while (behind < second.length && third[behind] <= z) behind += 1;
  second.splice(at, behind - at, y);
  third.splice(at, behind - at, z);
}

/** Points that are tried first against all others: most fall to one of them, without sorting. */
const PROBES = 128;

/** Whether point a has as much as b of everything, and more of something. */
function dominates([x, y = x, z = y]: readonly Float64Array[], a: number, b: number): boolean {
  if (!(x[a] >= x[b] && y[a] >= y[b] && z[a] >= z[b])) return false;
  return x[a] > x[b] || y[a] > y[b] || z[a] > z[b];
}

/** The points that none of a few others dominates; the probe that last did is tried first. */
function withoutPlainLosers(keys: readonly Float64Array[], among: Uint32Array): Uint32Array {
  const every = Math.ceil(among.length / PROBES);
  if (every < 2) return among;
  const probes = stairsOver(
    keys,
    among.filter((_, i) => i % every === 0),
  );
  return among.filter((index) => {
    for (let i = 0; i < probes.length; i++) {
      if (!dominates(keys, probes[i], index)) continue;
      [probes[0], probes[i]] = [probes[i], probes[0]];
      return false;
    }
    return true;
  });
}

/**
 * The points that no other dominates: none has as much of everything and more of something.
 *
 *     sorted by the first objective; a staircase over the other two; equal points are all kept
 *
 * @param keys - values by index of one to three objectives, larger is better; all of them numbers [any unit]
 * @param among - indices of the points to compare [-]
 * @returns indices of the points that are not dominated, rising [-]
 * @throws {OutOfRangeError} on no or more than three objectives
 *
 * Valid for finite keys; O(n log n) with few changes of the staircase. Source: Kung, Luccio, Preparata, J. ACM 22 (1975) 469–476 (from memory)
 */
export function nonDominated(keys: readonly Float64Array[], among: Uint32Array): Uint32Array {
  if (!(keys.length >= 1 && keys.length <= MOST_OBJECTIVES))
    throw new OutOfRangeError("objectives", keys.length, "1 to 3");
  return Uint32Array.from(stairsOver(keys, withoutPlainLosers(keys, among))).sort();
}

/** Sorted by the first objective, a staircase over the other two. */
function stairsOver(keys: readonly Float64Array[], among: Uint32Array): number[] {
  const [x, y = x, z = y] = keys;
  const sorted = among.slice().sort((a, b) => x[b] - x[a] || y[b] - y[a] || z[b] - z[a] || a - b);
  const stairs: Staircase = { second: [], third: [] };
  const kept: number[] = [];
  let before = -1;
  let beforeKept = false;
  for (const index of sorted) {
    const equal = before >= 0 && x[before] === x[index] && y[before] === y[index] && z[before] === z[index];
    if (!equal) beforeKept = !isCovered(stairs, y[index], z[index]);
    if (beforeKept) kept.push(index);
    if (!equal && beforeKept) addStep(stairs, y[index], z[index]);
    before = index;
  }
  return kept;
}

/** Keys of which more is better; what is infinite (no suction needed) counts as the largest number. */
function asKeys(keys: Float64Array, { want }: Objective): Float64Array {
  for (let i = 0; i < keys.length; i++) {
    if (keys[i] === Number.POSITIVE_INFINITY) keys[i] = Number.MAX_VALUE;
    if (want === "least") keys[i] = -keys[i];
  }
  return keys;
}

/** Margin, mass and time: what is weighed against each other unless other columns are named. */
export const USUAL_OBJECTIVES: readonly Objective[] = [
  { column: "margin", want: "most" },
  { column: "mass", want: "least" },
  { column: "time", want: "most" },
];

/**
 * What {@link nonDominated} compares, apart from the question, so that another thread can.
 *
 *     larger is better; combinations without a number in one of the columns are left out
 *
 * @param prepared - the question
 * @param results - solved combinations
 * @param objectives - columns and what is wanted of each; margin, mass and time unless given
 * @param among - indices to compare; those that break no limit unless given
 * @returns keys by index [any unit] and indices [-]
 *
 * Valid for any columns
 */
export function contestOf(
  prepared: Prepared,
  results: Results,
  objectives: readonly Objective[] = USUAL_OBJECTIVES,
  among: Uint32Array = meetingCombinations(results),
): { readonly keys: readonly Float64Array[]; readonly among: Uint32Array } {
  const keys = objectives.map((objective) =>
    asKeys(columnOf(prepared, results, objective.column), objective),
  );
  return { keys, among: among.filter((index) => keys.every((key) => !Number.isNaN(key[index]))) };
}

/**
 * The combinations that no other combination dominates, among those that meet every limit.
 *
 *     as {@link nonDominated}, over one to three columns
 *
 * @param prepared - the question
 * @param results - solved combinations; fronts of parts may be merged by giving their union as `among`
 * @param objectives - columns and what is wanted of each; margin, mass and time unless given
 * @param among - indices to compare; those that break no limit unless given
 * @returns indices, rising [-]; combinations without a number in one of the columns are left out
 * @throws {OutOfRangeError} on no or more than three objectives
 *
 * Valid for any columns. The front of a union is the front of the parts' fronts. Source: as {@link nonDominated}
 */
export function frontOf(
  prepared: Prepared,
  results: Results,
  objectives: readonly Objective[] = USUAL_OBJECTIVES,
  among: Uint32Array = meetingCombinations(results),
): Uint32Array {
  const keys = objectives.map((objective) =>
    asKeys(columnAt(prepared, results, objective.column, among), objective),
  );
  const places = new Uint32Array(among.length).map((_, i) => i);
  const known = places.filter((i) => keys.every((key) => !Number.isNaN(key[i])));
  return nonDominated(keys, known)
    .map((i) => among[i])
    .sort();
}

/**
 * Marks the combinations of a chunk that no other of the chunk dominates, so that the whole front is sought among these alone.
 *
 *     the front of a union is the front of the parts' fronts
 *
 * @param prepared - the question
 * @param chunk - solved combinations; {@link FLAG.foremost} is written into its flags [-]
 * @returns nothing
 *
 * Valid for margin, mass and time. Source: as {@link nonDominated}
 */
export function markForemost(prepared: Prepared, chunk: Chunk): void {
  for (const index of frontOf(prepared, [chunk])) chunk.flags[index - chunk.from] |= FLAG.foremost;
}

/** @returns indices of the combinations that {@link markForemost} marked, rising */
export function foremostCombinations(results: Results): Uint32Array {
  const found: number[] = [];
  for (const { from, count, flags } of results)
    for (let i = 0; i < count; i++) if (flags[i] & FLAG.foremost) found.push(from + i);
  return Uint32Array.from(found);
}
