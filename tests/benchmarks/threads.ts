import { Worker } from "node:worker_threads";
import { type Chunk, chunkOver } from "#shared/decide/choose/columns.ts";
import { RUN } from "#shared/decide/choose/solveChunk.ts";
import type { Done, Task } from "./chooseWorker.ts";
import type { SweepSums } from "./sweepCases.ts";

const MOST_RUNS = 16;
/** Pieces that each thread gets at least, so that none waits long for the last one. */
const PIECES = 8;

export interface Answer {
  readonly chunks: Chunk[];
  /** of the bare solves */
  readonly sums: SweepSums;
}

const pieceOf = (size: number, threads: number): number =>
  RUN * Math.max(1, Math.min(MOST_RUNS, Math.floor(size / (threads * PIECES * RUN))));

function addSums(a: SweepSums, b: SweepSums): SweepSums {
  return { pressure: a.pressure + b.pressure, speed: a.speed + b.speed, flow: a.flow + b.flow };
}

/** Hands pieces of the work to the threads until none is left. */
export function inThreads(workers: readonly Worker[], kind: Task["kind"], size: number): Promise<Answer> {
  const piece = pieceOf(size, workers.length);
  const chunks: Chunk[] = [];
  let sums: SweepSums = { pressure: 0, speed: 0, flow: 0 };
  let [next, back] = [0, 0];
  return new Promise((resolve, reject) => {
    const give = (worker: Worker) => {
      if (next >= size) return;
      const to = Math.min(size, next + piece);
      worker.postMessage({ kind, from: next, to } satisfies Task);
      next = to;
    };
    for (const worker of workers) {
      worker.removeAllListeners();
      worker.on("error", reject);
      worker.on("message", (done: Done) => {
        if (done.buffer) chunks.push(chunkOver(done.from, done.to - done.from, done.buffer));
        if (done.sums) sums = addSums(sums, done.sums);
        back += done.to - done.from;
        if (back === size) resolve({ chunks, sums });
        else give(worker);
      });
      give(worker);
    }
  });
}

/** Runs something with threads of its own. @param file - that starts serveTasks in a thread */
export async function withThreads<T>(
  file: string,
  threads: number,
  work: (workers: readonly Worker[]) => Promise<T>,
): Promise<T> {
  const workers = Array.from({ length: threads }, () => new Worker(file));
  try {
    return await work(workers);
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}
