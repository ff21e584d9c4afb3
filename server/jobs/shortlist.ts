import { buildUncertainty } from "../../shared/book/buildUncertainty.ts";
import { buildOfSet } from "../../shared/book/choose/openedSet.ts";
import { resolveBuild } from "../../shared/book/resolve.ts";
import { placesWithTies, type SetUncertainty } from "../../shared/decide/choose/shortlist.ts";
import type { StatedUncertainty } from "../../shared/decide/uncertainty.ts";
import type { ShortlistQuery } from "../../shared/model/api/choose.ts";
import type { Threads } from "../threads/threads.ts";
import type { Job } from "./job.ts";
import { pageOf, setOf, type ToldSet } from "./results.ts";

const known = new WeakMap<Job, Map<number, SetUncertainty>>();

function knownOf(job: Job): Map<number, SetUncertainty> {
  const map = known.get(job) ?? new Map<number, SetUncertainty>();
  known.set(job, map);
  return map;
}

/** Every uncertainty that the book holds for a set, as for a build of the same parts. */
function uncertaintyOf({ question }: Job, set: ToldSet): Omit<StatedUncertainty, "angles"> {
  const { book, base } = question;
  const build = buildOfSet(book, base, { ...set, mass: set.values.mass ?? base.vehicle.mass });
  const { uncertainty, correlated } = buildUncertainty(book, build, resolveBuild(book, build));
  return { uncertainty, correlated };
}

interface Judged {
  readonly set: ToldSet;
  readonly doubt: SetUncertainty;
  readonly stated: boolean;
}

async function judged(job: Job, threads: Threads, index: number): Promise<Judged> {
  const set = setOf(job, index);
  const asked = uncertaintyOf(job, set);
  const stated = Object.keys(asked.uncertainty).length + (asked.correlated?.length ?? 0) > 0;
  const ready = knownOf(job).get(index);
  const doubt =
    ready ?? (await threads.run("doubt", { key: job.id, problem: job.question.problem, index, asked }));
  knownOf(job).set(index, doubt);
  return { set, doubt, stated };
}

const largest = (value: number | null): number => value ?? Number.POSITIVE_INFINITY;

function rankedBy({ set, doubt }: Judged, rank: ShortlistQuery["rank"]): number {
  if (rank === "chance") return doubt.chance;
  return largest(rank === "margin5" ? doubt.margin5 : set.values.margin);
}

/** @returns the first sets of a ranking with their chances, ranked again by what is surest */
export async function shortlistOf(job: Job, threads: Threads, query: ShortlistQuery) {
  const { sort, order, only, count, rank } = query;
  const { indices } = pageOf(job, { sort, order, only, from: 0, limit: count });
  const all = await Promise.all(Array.from(indices, (index) => judged(job, threads, index)));
  const best = all.sort(
    (a, b) => rankedBy(b, rank) - rankedBy(a, rank) || largest(b.doubt.margin5) - largest(a.doubt.margin5),
  );
  // Chances near 1 tell nothing apart: ties are always judged by the margin and its deviation.
  const value = ({ set, doubt }: Judged) => largest(rank === "margin" ? set.values.margin : doubt.margin5);
  const places = placesWithTies(
    best.map((each) => ({ index: each.set.index, value: value(each), deviation: each.doubt.deviation })),
  );
  const least = job.request.wants.leastChance ?? 0;
  const items = best.map(({ set, doubt }, i) => {
    const { chance, margin5, deviation } = doubt;
    return { place: places[i], chance, margin5, deviation, enough: chance >= least, set };
  });
  return { items, undoubted: all.length > 0 && all.every(({ stated }) => !stated) };
}
