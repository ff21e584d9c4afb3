import type { CombinationsQuery, PointsQuery, ShortlistQuery } from "../../shared/model/api/choose.ts";
import { jsonBytes } from "../routes/jsonBytes.ts";
import type { Threads } from "../threads/threads.ts";
import type { Job } from "./job.ts";
import type { PageAsked } from "./results.ts";
import { type Judged, ranked } from "./shortlist.ts";

/** Combinations of a shortlist that are judged at once, a thread: one that nobody waits for any more ends after these. */
const AHEAD = 2;

const known = new WeakMap<Job, Map<number, Judged>>();

function knownOf(job: Job): Map<number, Judged> {
  const map = known.get(job) ?? new Map<number, Judged>();
  known.set(job, map);
  return map;
}

/** What a job's results answer, worked out by the threads; each ends soon, so that none is given up under way. @throws {Refusal} 409 before the job is done */
export class Answers {
  constructor(
    private readonly threads: Threads,
    private readonly job: Job,
  ) {}

  private asked(query: CombinationsQuery): PageAsked {
    return { solved: this.job.results(), query, order: this.job.order };
  }

  /** @returns a page of combinations in full, best first, and how many there are in all */
  async page(query: CombinationsQuery) {
    const { page, combinations } = await this.threads.run("combinations", this.asked(query));
    this.job.order = page.order;
    return { total: page.total, combinations };
  }

  /** @returns one combination in full, as bytes of JSON */
  combination(index: number): Promise<Uint8Array> {
    return this.threads.run("combination", { solved: this.job.results(), index });
  }

  /** @returns points of a plot, as bytes of JSON */
  points(query: PointsQuery): Promise<Uint8Array> {
    return this.threads.run("points", { solved: this.job.results(), query });
  }

  /** @returns what keeps combinations out, as bytes of JSON */
  missed(): Promise<Uint8Array> {
    return this.threads.run("missed", this.job.results());
  }

  /** @returns the first combinations of a ranking with their chances, ranked again by what is surest, as bytes of JSON; given up between two combinations */
  async shortlist(
    { sort, order, only, count, rank }: ShortlistQuery,
    signal: AbortSignal,
  ): Promise<Uint8Array> {
    const query = { sort, order, only, kind: "any" as const, from: 0, limit: count };
    const { indices } = await this.threads.run("page", this.asked(query));
    const all: Judged[] = [];
    const waiting = [...indices.entries()];
    const judgeNext = async (): Promise<void> => {
      for (let next = waiting.shift(); next && !signal.aborted; next = waiting.shift()) {
        const [place, index] = next;
        all[place] = await this.judge(index);
      }
    };
    await Promise.all(Array.from({ length: AHEAD * this.threads.count }, judgeNext));
    signal.throwIfAborted();
    return jsonBytes(ranked(all, rank, this.job.request.wants.leastChance ?? 0));
  }

  private async judge(index: number): Promise<Judged> {
    const done = knownOf(this.job);
    // Ends by itself soon: a thread isn't thrown away for it.
    const found = done.get(index) ?? (await this.threads.run("judge", { solved: this.job.results(), index }));
    done.set(index, found);
    return found;
  }
}
