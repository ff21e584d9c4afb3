import type { ChooseRequest } from "../../shared/model/api/choose.ts";
import type { Threads } from "../threads/threads.ts";
import { MOST_OPEN, TooManyJobsError, UnknownJobError } from "./errors.ts";
import { Job } from "./job.ts";
import type { SolvedPiece } from "./piece.ts";
import type { SealedQuestion } from "./question.ts";
import type { bestOf } from "./results.ts";
import { Turns } from "./turns.ts";

/** Combinations of ended jobs that are kept, the newest always: some 230 MB. */
const KEPT_COMBINATIONS = 3_000_000;
const KEPT_JOBS = 24;

/** Every choosing that is under way or kept. */
export class Jobs {
  private readonly jobs = new Map<string, Job>();
  private readonly turns: Turns;

  constructor(
    readonly threads: Threads,
    private readonly clock: () => Date,
    private readonly log: (error: unknown) => void,
  ) {
    this.turns = new Turns(
      threads,
      (job) => void this.finish(job),
      (job, error) => this.fail(job, error),
    );
  }

  /** @throws {TooManyJobsError} where as many are open as may be */
  requireRoom(): void {
    if ([...this.jobs.values()].filter((job) => !job.isOver).length >= MOST_OPEN)
      throw new TooManyJobsError();
  }

  /**
   * Begins a question, or gives the job that has the same numbers and did not fail.
   *
   * @throws {TooManyJobsError} where too many are open
   */
  start(request: ChooseRequest, question: SealedQuestion): { readonly job: Job; readonly known: boolean } {
    const known = this.jobs.get(question.id);
    if (known && known.state !== "failed") return { job: known, known: true };
    this.requireRoom();
    const job = new Job(request, question, this.clock(), () => performance.now());
    this.jobs.set(question.id, job);
    this.turns.add(job);
    return { job, known: false };
  }

  /** @throws {UnknownJobError} */
  find(id: string): Job {
    const job = this.jobs.get(id);
    if (!job) throw new UnknownJobError(id);
    return job;
  }

  /** What takes a while of the threads: the job may be deleted meanwhile, or the server close and its threads with it. @throws {UnknownJobError} */
  async whileKept<T>(id: string, work: (job: Job) => Promise<T>): Promise<T> {
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
    job.stop("cancelled");
  }

  async close(): Promise<void> {
    for (const id of [...this.jobs.keys()]) this.remove(id);
    await this.threads.close();
  }

  /** @returns the best combinations of pieces that came back; none where that can't be told */
  async best(job: Job, pieces: readonly SolvedPiece[]): Promise<Awaited<ReturnType<typeof bestOf>>> {
    try {
      return await this.threads.run("best", { question: job.question, pieces });
    } catch (error) {
      // A job that was cancelled, or whose server closes, has nobody left to show them to.
      if (!job.isOver) this.log(error);
      return [];
    }
  }

  private async finish(job: Job): Promise<void> {
    try {
      const front = await this.threads.run("front", job.soFar());
      if (!job.isOver) job.finish(front);
      this.makeRoom();
    } catch (error) {
      if (!job.isOver) this.fail(job, error);
    }
  }

  private fail(job: Job, error: unknown): void {
    this.log(error);
    job.stop("failed", "The combinations could not be solved; what it was is in the server's log.");
  }

  /** Lets the oldest ended jobs go, the newest never. */
  private makeRoom(): void {
    const ended = [...this.jobs.values()].filter((job) => job.isOver).reverse();
    let kept = 0;
    ended.forEach((job, i) => {
      kept += job.state === "done" ? job.count : 0;
      if (i > 0 && (kept > KEPT_COMBINATIONS || i >= KEPT_JOBS)) this.jobs.delete(job.id);
    });
  }
}
