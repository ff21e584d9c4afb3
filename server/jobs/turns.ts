import { RUN } from "../../shared/decide/choose/solveChunk.ts";
import type { Threads } from "../threads/threads.ts";
import type { Job } from "./job.ts";
import type { SolvedPiece } from "./piece.ts";

/** Runs of neighbours in a job's first piece, before its pace is known. */
const FIRST_RUNS = 1;
const MOST_RUNS = 64;
/** What one piece should take [ms]: short enough that a cancelled job frees its threads at once. */
const PIECE_TIME = 40;
/** Pieces that wait in a thread's queue, so that it never stands idle. */
const AHEAD = 2;

/** Hands the threads to the running jobs in turn, one piece each, so that none waits for another to end. */
export class Turns {
  private readonly waiting: Job[] = [];
  private readonly runs = new WeakMap<Job, number>();
  private flying = 0;

  constructor(
    private readonly threads: Threads,
    private readonly finish: (job: Job) => void,
    private readonly fail: (job: Job, error: unknown) => void,
  ) {}

  add(job: Job): void {
    this.waiting.push(job);
    this.fly();
  }

  private fly(): void {
    while (this.flying < this.threads.count * AHEAD) {
      const job = this.waiting.shift();
      if (!job) return;
      if (job.isOver) continue;
      void this.solve(job);
      if (job.next < job.count) this.waiting.push(job);
    }
  }

  private async solve(job: Job): Promise<void> {
    job.begin();
    const from = job.next;
    const to = Math.min(job.count, from + RUN * (this.runs.get(job) ?? FIRST_RUNS));
    job.next = to;
    this.flying += 1;
    const start = performance.now();
    try {
      const { question, stopped } = job;
      const piece = await this.threads.run("solve", { question, from, to, stopped });
      if (piece && !job.isOver) this.receive(job, piece, performance.now() - start);
    } catch (error) {
      if (!job.isOver) this.fail(job, error);
    } finally {
      this.flying -= 1;
      this.fly();
    }
  }

  private receive(job: Job, piece: SolvedPiece, took: number): void {
    job.receive(piece);
    // A piece waits behind the one before it in its thread: its own time is that part of the whole.
    const own = Math.max(1, took / AHEAD);
    const runs = Math.round((piece.count * PIECE_TIME) / (own * RUN));
    this.runs.set(job, Math.max(1, Math.min(MOST_RUNS, runs)));
    if (job.solved === job.count) this.finish(job);
  }
}
