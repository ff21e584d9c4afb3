import type { Chunk } from "../../shared/decide/choose/columns.ts";
import { detailOf } from "../../shared/decide/choose/detail.ts";
import { contestOf, foremostSets } from "../../shared/decide/choose/front.ts";
import { nearestSets, relaxations, tallyOf } from "../../shared/decide/choose/nearest.ts";
import { rankedAll, rankedPage } from "../../shared/decide/choose/rank.ts";
import { type ChosenSet, LIMITS, type Objective } from "../../shared/decide/choose/result.ts";
import { columnAt, meetingSets, placeIn, type Results } from "../../shared/decide/choose/values.ts";
import type { PointsQuery, SetsQuery } from "../../shared/model/api/choose.ts";
import { Refusal } from "../refusal.ts";
import type { Threads } from "../threads/threads.ts";
import type { Job } from "./job.ts";

/** Behind this row the whole order is worked out once and kept. */
const DEEP = 2000;

interface Kept {
  readonly by: string;
  readonly order: Uint32Array;
}
const kept = new WeakMap<Job, Kept>();
const meeting = new WeakMap<Job, Uint32Array>();
const solved = new WeakMap<Job, Results>();

/** @throws {Refusal} 409 while the sets are still being solved */
export function resultsOf(job: Job): Results {
  const known = solved.get(job);
  if (known) return known;
  if (job.state === "done") {
    const results = job.results();
    solved.set(job, results);
    return results;
  }
  throw new Refusal(409, "not-done", `The choosing is ${job.state}; its sets can be read once it is done.`);
}

function meetingOf(job: Job): Uint32Array {
  const known = meeting.get(job);
  if (known) return known;
  const found = meetingSets(resultsOf(job));
  meeting.set(job, found);
  return found;
}

/** @returns the sets that a page is taken from; undefined: every set */
function amongOf(job: Job, only: SetsQuery["only"]): Uint32Array | undefined {
  if (only === "all") return undefined;
  return only === "front" ? job.front : meetingOf(job);
}

/** @returns indices of a page of sets, best first, and how many there are in all */
export function pageOf(
  job: Job,
  { sort, order, only, from, limit }: SetsQuery,
): { total: number; indices: Uint32Array } {
  const results = resultsOf(job);
  const among = amongOf(job, only);
  const total = among?.length ?? job.sets;
  const by: Objective = { column: sort, want: order };
  if (from + limit <= DEEP)
    return { total, indices: rankedPage(job.prepared, results, by, { skip: from, count: limit }, among) };
  const key = `${sort} ${order} ${only}`;
  const known = kept.get(job);
  const ranked = known?.by === key ? known.order : rankedAll(job.prepared, results, by, among);
  kept.set(job, { by: key, order: ranked });
  return { total, indices: ranked.subarray(from, from + limit) };
}

/** The golden section of 1: its multiples fall evenly, and never in step with the order of the sets. */
const GOLDEN = 0.6180339887498949;

/** @returns places of about `limit` of `count` things, spread evenly; all of them where there are no more */
function spread(count: number, limit: number): number[] {
  if (count <= limit) return Array.from({ length: count }, (_, i) => i);
  return Array.from({ length: limit }, (_, i) => Math.floor(((i * GOLDEN) % 1) * count));
}

const ADMISSIBLE = 1;
const ON_FRONT = 2;

/** Columns of which more is wanted; of all others less. */
const MOST_WANTED = new Set(["margin", "parked", "driving", "time", "rotorFactor", "suction"]);
const wanted = (column: Objective["column"]): Objective => ({
  column,
  want: MOST_WANTED.has(column) ? "most" : "least",
});

/** @returns sets to show: the front whole, of the admitted ones and of all as many as there is room for */
function shownSets(job: Job, front: Uint32Array, limit: number): Uint32Array {
  const admitted = meetingOf(job);
  const some = spread(admitted.length, limit / 2).map((place) => admitted[place]);
  return Uint32Array.from(new Set([...spread(job.sets, limit / 2), ...some, ...front]));
}

/** @returns points of a plot: index, x, y, and what they are; those that none dominates in the two are all there */
export async function pointsOf(job: Job, threads: Threads, { x, y, limit }: PointsQuery) {
  const results = resultsOf(job);
  const objectives = [wanted(x), wanted(y)];
  const contest = contestOf(job.prepared, results, objectives, meetingOf(job));
  const front = await threads.run("front", contest, {
    transfer: contest.keys.map(({ buffer }) => buffer as ArrayBuffer),
  });
  const indices = shownSets(job, front, limit);
  const [across, up] = [x, y].map((column) => columnAt(job.prepared, results, column, indices));
  const onFront = new Set(front);
  const points = Array.from(indices, (index, i) => {
    const { chunk, at } = placeIn(results, index);
    const kind = (chunk.broken[at] === 0 ? ADMISSIBLE : 0) + (onFront.has(index) ? ON_FRONT : 0);
    return [index, across[i], up[i], kind] as const;
  });
  const isShown = (value: number) => Number.isFinite(value);
  return { total: job.sets, points: points.filter(([, left, high]) => isShown(left) && isShown(high)) };
}

/** A set as the API tells it: without its places in the lists, which only the engine knows. */
export type ToldSet = Omit<ChosenSet, "places"> & { readonly onFront: boolean };

/** @returns one set in full, its time found whatever limits it breaks */
export function setOf(job: Job, index: number): ToldSet {
  const { places: _inLists, ...set } = detailOf(job.prepared, resultsOf(job), index);
  return { ...set, onFront: job.front.includes(index) };
}

/** Sets told of the pieces that came back since the last time. */
const TOLD = 5;

/** @returns the sets of most margin among those of the pieces that meet every limit, to be told while the rest is solved */
export function bestOf({ prepared }: Job, pieces: readonly Chunk[]): Omit<ToldSet, "onFront">[] {
  const found = pieces.flatMap((piece) => {
    const indices = foremostSets([piece]);
    const margins = columnAt(prepared, [piece], "margin", indices);
    return Array.from(indices, (index, i) => ({ piece, index, margin: margins[i] }));
  });
  const best = found.sort((a, b) => b.margin - a.margin || a.index - b.index).slice(0, TOLD);
  return best.map(({ piece, index }) => {
    const { places: _inLists, ...set } = detailOf(prepared, [piece], index);
    return set;
  });
}

/** Sets told as nearest where no set, or hardly one, meets the limits. */
const NEAREST = 10;

/** @returns how many sets each limit keeps out, the least change of each alone that lets a set in, and the nearest sets */
export function missedBy(job: Job) {
  const results = resultsOf(job);
  const { meeting, broken, alone } = tallyOf(results);
  return {
    admissible: meeting,
    limits: LIMITS.map((limit, place) => ({ limit, broken: broken[place], alone: alone[place] })),
    relaxations: relaxations(job.prepared, results),
    nearest: nearestSets(job.prepared, results, NEAREST).map(({ index, shortfall }) => ({
      shortfall,
      set: setOf(job, index),
    })),
  };
}
