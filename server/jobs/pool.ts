import { availableParallelism } from "node:os";
import { Piscina } from "piscina";
import type { Contest, Doubted, Piece, Runner } from "./runner.ts";

/** An idle thread is let go after so long [ms]. */
const IDLE = 30_000;
/** More threads than this bring little: the results are put together on one. */
const MOST_THREADS = 8;

/** @returns a pool of worker threads, one a core, that start with the first piece; `file` is the built worker */
export function pool(file: string): Runner {
  const threads = Math.min(MOST_THREADS, Math.max(1, availableParallelism()));
  const workers = new Piscina({
    filename: file,
    minThreads: 0,
    maxThreads: threads,
    idleTimeout: IDLE,
  });
  return {
    threads,
    solve: (piece: Piece) => workers.run(piece, { name: "solve" }),
    front: (contest: Contest) =>
      workers.run(contest, {
        name: "front",
        transferList: contest.keys.map(({ buffer }) => buffer as ArrayBuffer),
      }),
    doubt: (set: Doubted) => workers.run(set, { name: "doubt" }),
    close: () => workers.destroy(),
  };
}
