import { Worker } from "node:worker_threads";
import { type Chunk, chunkOver } from "../../shared/decide/choose/columns.ts";
import { frontOf } from "../../shared/decide/choose/front.ts";
import { prepare } from "../../shared/decide/choose/prepare.ts";
import { rankedPage } from "../../shared/decide/choose/rank.ts";
import { RUN } from "../../shared/decide/choose/solveChunk.ts";
import { gathered, meetingSets } from "../../shared/decide/choose/values.ts";
import type { Task } from "./chooseWorker.ts";
import { SWEEP_SIZE } from "./sweepCases.ts";
import { sweepQuestion } from "./sweepQuestion.ts";

const THREADS = 2;
const RUNS = 5;
const PIECE = 16 * RUN;
const PAGE = { skip: 0, count: 100 };
const KILOBYTES_PER_MEGABYTE = 1000;

interface Done {
  readonly from: number;
  readonly to: number;
  readonly buffer: ArrayBuffer | null;
}

/** Hands pieces of the work to the threads until none is left. */
function inThreads(workers: readonly Worker[], kind: Task["kind"]): Promise<Chunk[]> {
  const chunks: Chunk[] = [];
  let [next, back] = [0, 0];
  return new Promise((resolve, reject) => {
    const give = (worker: Worker) => {
      if (next >= SWEEP_SIZE) return;
      const to = Math.min(SWEEP_SIZE, next + PIECE);
      worker.postMessage({ kind, from: next, to } satisfies Task);
      next = to;
    };
    for (const worker of workers) {
      worker.removeAllListeners();
      worker.on("error", reject);
      worker.on("message", ({ from, to, buffer }: Done) => {
        if (buffer) chunks.push(chunkOver(from, to - from, buffer));
        back += to - from;
        if (back === SWEEP_SIZE) resolve(chunks);
        else give(worker);
      });
      give(worker);
    }
  });
}

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

async function seconds(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
}

export interface ChooseTimes {
  readonly sets: number;
  readonly threads: number;
  /** median of a whole choosing: solved, judged, ranked, non-dominated [s] */
  readonly seconds: number;
  /** the same million points solved and nothing else, in the same threads [s] */
  readonly bareSeconds: number;
  readonly ratioToBare: number;
  readonly meeting: number;
  readonly nonDominated: number;
  /** of the whole process, threads included [MB] */
  readonly peakMemory: number;
}

/**
 * A million sets chosen from, end to end, against the bare solves of the same million in as many threads.
 *
 *     solve, limits, time, first page by margin, non-dominated over margin, mass and time
 *
 * @param file - that starts {@link serveTasks} in a thread
 * @returns medians of five runs [s], memory [MB]
 */
export async function timedChoose(file: string): Promise<ChooseTimes> {
  const workers = Array.from({ length: THREADS }, () => new Worker(file));
  const prepared = prepare(sweepQuestion());
  let [meeting, nonDominated] = [0, 0];
  const choose = async () => {
    const results = gathered(await inThreads(workers, "choose"));
    rankedPage(prepared, results, { column: "margin", want: "most" }, PAGE);
    const among = meetingSets(results);
    [meeting, nonDominated] = [among.length, frontOf(prepared, results, undefined, among).length];
  };
  await inThreads(workers, "bare");
  await choose();
  const [bare, whole]: [number[], number[]] = [[], []];
  for (let run = 0; run < RUNS; run++) {
    bare.push(await seconds(() => inThreads(workers, "bare")));
    whole.push(await seconds(choose));
  }
  await Promise.all(workers.map((worker) => worker.terminate()));
  return {
    sets: SWEEP_SIZE,
    threads: THREADS,
    seconds: middle(whole),
    bareSeconds: middle(bare),
    ratioToBare: middle(whole) / middle(bare),
    meeting,
    nonDominated,
    peakMemory: process.resourceUsage().maxRSS / KILOBYTES_PER_MEGABYTE,
  };
}
