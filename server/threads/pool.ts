import { availableParallelism } from "node:os";
import { Piscina } from "piscina";
import { Refusal } from "../refusal.ts";
import type { Output, TaskName } from "./tasks.ts";
import { type RunOptions, type Threads, TooBusyError } from "./threads.ts";
import { named, warmFirst } from "./warmFirst.ts";
import type { RefusedTask, Task } from "./worker.ts";

/** An idle thread is let go after so long [ms]. */
const IDLE = 30_000;
/** More threads than this bring little: the results are put together on one. */
const MOST_THREADS = 8;
/** What a thread made last and may have done with already is collected beyond so much [MB]; V8 lets 48 gather by itself, for each thread. */
const YOUNG = 16;
/** Tasks that may wait for a thread. */
const MOST_WAITING = 200;

function answerOf<N extends TaskName>(answer: Output<N> | RefusedTask): Output<N> {
  if (typeof answer === "object" && answer !== null && "refused" in answer)
    throw Refusal.from(answer.refused);
  return answer;
}

/** @returns a pool of worker threads, one a core, that start with the first task; `file` is the built worker */
export function pool(file: string): Threads {
  const count = Math.min(MOST_THREADS, Math.max(1, availableParallelism()));
  const workers = new Piscina({
    filename: file,
    minThreads: 0,
    maxThreads: count,
    idleTimeout: IDLE,
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
    loadBalancer: warmFirst(),
  });
  const stops = new Set<(error: Error) => void>();
  // A thread that can't even start belongs to no task: all that waits is given up, or it would be started for ever.
  workers.on("error", (error: Error) => {
    for (const stop of [...stops]) stop(error);
  });
  // Piscina starts a thread with the next task alone: what waits for one that ended would wait for that task too.
  const wake = () => {
    if (workers.queueSize > 0) workers.run(named({ name: "wake", input: null })).catch(() => undefined);
  };
  const run = <N extends TaskName>(task: Task<N>, { signal, transfer }: RunOptions): Promise<Output<N>> =>
    new Promise((resolve, reject) => {
      const giveUp = new AbortController();
      const stop = (error: Error) => {
        reject(error);
        giveUp.abort();
      };
      stops.add(stop);
      const signals = signal ? [signal, giveUp.signal] : [giveUp.signal];
      workers
        .run(named(task), { signal: AbortSignal.any(signals), transferList: transfer && [...transfer] })
        .then(answerOf<N>)
        .then(resolve, (error) => {
          reject(error);
          wake();
        })
        .finally(() => stops.delete(stop));
    });
  return {
    count,
    run: async (name, input, options = {}) => {
      if (workers.queueSize >= MOST_WAITING) throw new TooBusyError(workers.queueSize);
      return run({ name, input }, options);
    },
    close: () => workers.destroy(),
  };
}
