import type { Worker } from "node:worker_threads";
import { solve } from "#client/state/outcome.ts";
import { askedFrom } from "#client/views/map/asked.ts";
import { questionOf } from "#client/views/map/question.ts";
import type { MapQuestion } from "#shared/decide/map/grid.ts";
import { type MapPart, mapOf, partsOf } from "#shared/decide/map/solve.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import type { MapTask } from "./chooseWorker.ts";
import { withThreads } from "./threads.ts";
import { percentile } from "./timing.ts";

const THREADS = 2;
const POINTS = 200;
const WARM = 12;
const MOVES = 60;
const MILLISECONDS = 1000;

export interface MapTimes {
  readonly points: number;
  /** a third setting moved, question to field, in two threads [s] */
  readonly drawn: Readonly<Record<"ducted" | "open", { readonly median: number; readonly p95: number }>>;
}

/** A map of one of the demo's builds over diameter and K_v, a third setting moved a little further each time. */
function questions(build: string, third: string, ends: readonly [number, number]): MapQuestion[] {
  const book = demoBook();
  const record = book.builds.find(({ id }) => id === build);
  if (!record) throw new Error(`The demo has no ${build}.`);
  const outcome = solve(book, record.data);
  return Array.from({ length: WARM + MOVES }, (_, i) => {
    const value = ends[0] + ((ends[1] - ends[0]) * (i % MOVES)) / MOVES;
    const asked = askedFrom(new URLSearchParams({ third, [third]: String(value) }));
    const question = questionOf(book, outcome, asked, POINTS);
    if (!question) throw new Error(`${build} has no map.`);
    return question;
  });
}

function solved(workers: readonly Worker[], question: MapQuestion): Promise<readonly MapPart[]> {
  const ranges = partsOf(question, workers.length);
  const parts: MapPart[] = [];
  return new Promise((resolve, reject) => {
    for (const [i, range] of ranges.entries()) {
      const worker = workers[i];
      worker.removeAllListeners();
      worker.on("error", reject);
      worker.on("message", (part: MapPart) => {
        parts.push(part);
        if (parts.length === ranges.length) resolve(parts);
      });
      worker.postMessage({ kind: "map", question, range } satisfies MapTask);
    }
  });
}

async function timed(workers: readonly Worker[], asked: readonly MapQuestion[]) {
  const times: number[] = [];
  for (const question of asked) {
    const start = performance.now();
    mapOf(question, await solved(workers, question));
    times.push((performance.now() - start) / MILLISECONDS);
  }
  const warm = times.slice(WARM);
  return { median: percentile(warm, 0.5), p95: percentile(warm, 0.95) };
}

/** A map of 200 by 200 points solved in full in two threads, while a third setting is dragged. @param file - that starts serveTasks in a thread */
export function timedMap(file: string): Promise<MapTimes> {
  return withThreads(file, THREADS, async (workers) => {
    const ducted = await timed(workers, questions("pane-crawler", "gap", [2e-4, 9e-4]));
    const open = await timed(workers, questions("prop-scout", "mass", [0.08, 0.3]));
    return { points: POINTS * POINTS, drawn: { ducted, open } };
  });
}
