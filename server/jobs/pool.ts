import { availableParallelism } from "node:os";
import { Piscina } from "piscina";
import type { SetUncertainty } from "../../shared/decide/choose/shortlist.ts";
import type { Contest, Piece, Runner, SetToSample } from "./runner.ts";

/** An idle thread is let go after so long [ms]. */
const IDLE = 30_000;
/** More threads than this bring little: the results are put together on one. */
const MOST_THREADS = 8;

type Task = { readonly name: "solve" | "front" | "doubt"; readonly transferList?: ArrayBuffer[] };

/** @returns a pool of worker threads, one a core, that start with the first piece; `file` is the built worker */
export function pool(file: string): Runner {
  const threads = Math.min(MOST_THREADS, Math.max(1, availableParallelism()));
  const workers = new Piscina({
    filename: file,
    minThreads: 0,
    maxThreads: threads,
    idleTimeout: IDLE,
  });
  const stops = new Set<(error: Error) => void>();
  // A thread that can't even start belongs to no task: all that waits is given up, or it would be started for ever.
  workers.on("error", (error: Error) => {
    for (const stop of [...stops]) stop(error);
  });
  const run = <T>(what: unknown, task: Task): Promise<T> =>
    new Promise((resolve, reject) => {
      const giveUp = new AbortController();
      const stop = (error: Error) => {
        reject(error);
        giveUp.abort();
      };
      stops.add(stop);
      const over = () => stops.delete(stop);
      workers
        .run(what, { ...task, signal: giveUp.signal })
        .then(resolve, reject)
        .finally(over);
    });
  return {
    threads,
    solve: (piece: Piece) => run<ArrayBuffer>(piece, { name: "solve" }),
    front: (contest: Contest) =>
      run<Uint32Array>(contest, {
        name: "front",
        transferList: contest.keys.map(({ buffer }) => buffer as ArrayBuffer),
      }),
    doubt: (set: SetToSample) => run<SetUncertainty>(set, { name: "doubt" }),
    close: () => workers.destroy(),
  };
}
