import { createHash } from "node:crypto";
import type { Question } from "../../shared/book/choose/problem.ts";
import { countSets } from "../../shared/decide/choose/count.ts";
import { foremostSets, frontOf } from "../../shared/decide/choose/front.ts";
import { prepare } from "../../shared/decide/choose/prepare.ts";
import type { Problem } from "../../shared/decide/choose/problem.ts";
import type { ChooseRequest, PointsQuery, ShortlistQuery } from "../../shared/model/api/choose.ts";
import type { Threads } from "../threads/threads.ts";
import { MOST_OPEN, TooManyJobsError, UnknownJobError } from "./errors.ts";
import { Job } from "./job.ts";
import { pointsOf } from "./results.ts";
import { shortlistOf } from "./shortlist.ts";
import { Turns } from "./turns.ts";

/** Sets of ended jobs that are kept, the newest always: some 230 MB. */
const KEPT_SETS = 3_000_000;
const KEPT_JOBS = 24;
const ID_LENGTH = 24;

/** @returns the name of a question: the same numbers have the same name */
function nameOf(problem: Problem): string {
  return createHash("sha256").update(JSON.stringify(problem)).digest("hex").slice(0, ID_LENGTH);
}

/** Every choosing that is under way or kept. */
export class Jobs {
  private readonly jobs = new Map<string, Job>();
  private readonly turns: Turns;

  constructor(
    private readonly threads: Threads,
    private readonly clock: () => Date,
    log: (error: unknown) => void,
  ) {
    const fail = (job: Job, error: unknown) => {
      log(error);
      job.end("failed", "The sets could not be solved; what it was is in the server's log.");
    };
    this.turns = new Turns(threads, (job) => this.finish(job), fail);
  }

  /**
   * Begins a question, or gives the job that has the same numbers and did not fail.
   *
   * @throws {TooManySetsError} {NotEnoughDataError} {OutOfRangeError} before any work, as the engine
   * @throws {TooManyJobsError} where too many are open
   */
  start(request: ChooseRequest, question: Question): { readonly job: Job; readonly known: boolean } {
    countSets(question.problem);
    const id = nameOf(question.problem);
    const known = this.jobs.get(id);
    if (known && known.state !== "failed") return { job: known, known: true };
    if ([...this.jobs.values()].filter((job) => !job.isOver).length >= MOST_OPEN)
      throw new TooManyJobsError();
    const job = new Job(id, request, question, prepare(question.problem), this.clock(), () =>
      performance.now(),
    );
    this.jobs.set(id, job);
    this.turns.add(job);
    return { job, known: false };
  }

  /** @throws {UnknownJobError} */
  find(id: string): Job {
    const job = this.jobs.get(id);
    if (!job) throw new UnknownJobError(id);
    return job;
  }

  /** @returns the first sets of a ranking with their chances @throws {UnknownJobError} {Refusal} */
  shortlist(id: string, query: ShortlistQuery): ReturnType<typeof shortlistOf> {
    return this.whileKept(id, (job) => shortlistOf(job, this.threads, query));
  }

  /** @returns points of a plot @throws {UnknownJobError} {Refusal} */
  points(id: string, query: PointsQuery): ReturnType<typeof pointsOf> {
    return this.whileKept(id, (job) => pointsOf(job, this.threads, query));
  }

  /** What takes a while of the threads: the job may be deleted meanwhile, or the server close and its threads with it. */
  private async whileKept<T>(id: string, work: (job: Job) => Promise<T>): Promise<T> {
    try {
      return await work(this.find(id));
    } catch (error) {
      if (!this.jobs.has(id)) throw new UnknownJobError(id);
      throw error;
    }
  }

  /** Cancels what runs, forgets what ended. @throws {UnknownJobError} */
  remove(id: string): void {
    const job = this.find(id);
    this.jobs.delete(id);
    job.end("cancelled");
  }

  async close(): Promise<void> {
    for (const id of [...this.jobs.keys()]) this.remove(id);
    await this.threads.close();
  }

  private finish(job: Job): void {
    const results = job.results();
    job.front = frontOf(job.prepared, results, undefined, foremostSets(results));
    job.end("done");
    this.makeRoom();
  }

  /** Lets the oldest ended jobs go, the newest never. */
  private makeRoom(): void {
    const ended = [...this.jobs.values()].filter((job) => job.isOver).reverse();
    let sets = 0;
    ended.forEach((job, i) => {
      sets += job.state === "done" ? job.sets : 0;
      if (i > 0 && (sets > KEPT_SETS || i >= KEPT_JOBS)) this.jobs.delete(job.id);
    });
  }
}
