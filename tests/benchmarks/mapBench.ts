import type { Worker } from "node:worker_threads";
import { solve } from "#client/state/outcome.ts";
import { askedFrom } from "#client/views/map/asked.ts";
import { replyTo } from "#client/views/map/chance/answer.ts";
import { CLOSENESS, chanceQuestion } from "#client/views/map/chance/question.ts";
import { questionOf } from "#client/views/map/question.ts";
import { chanceOver } from "#shared/decide/map/chance.ts";
import type { MapQuestion } from "#shared/decide/map/grid.ts";
import { type MapPart, mapOf, mapPart, partsOf } from "#shared/decide/map/solve.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import type { MapTask } from "./chooseWorker.ts";
import { withThreads } from "./threads.ts";
import { percentile } from "./timing.ts";

const THREADS = 2;
const POINTS = 200;
const WARM = 12;
const MOVES = 60;
const MILLISECONDS = 1000;

type Kind = "ducted" | "open";

/** The chance of holding over a map, one thread: median of the moves [s]. */
export interface ChanceTimes {
  /** places sampled, samples of each, while it is dragged and once nothing moves */
  readonly nodes: Readonly<Record<keyof typeof CLOSENESS, number>>;
  /** carried from them to every point of the map */
  readonly field: number;
}

export interface MapTimes {
  readonly points: number;
  /** a third setting moved, question to field, in two threads [s] */
  readonly drawn: Readonly<Record<Kind, { readonly median: number; readonly p95: number }>>;
  readonly chance: Readonly<Record<Kind, ChanceTimes>>;
}

/** A third setting of one of the demo's builds, dragged from end to end. */
interface Drag {
  readonly build: string;
  readonly third: string;
  readonly ends: readonly [number, number];
}

const DRAGS: Readonly<Record<Kind, Drag>> = {
  ducted: { build: "pane-crawler", third: "gap", ends: [2e-4, 9e-4] },
  open: { build: "prop-scout", third: "mass", ends: [0.08, 0.3] },
};

/** What a map is made of at each move of the drag. */
function movesOf({ build, third, ends }: Drag, moves: number) {
  const book = demoBook();
  const record = book.builds.find(({ id }) => id === build);
  if (!record) throw new Error(`The demo has no ${build}.`);
  const outcome = solve(book, record.data);
  return Array.from({ length: moves }, (_, i) => {
    const value = ends[0] + ((ends[1] - ends[0]) * (i % MOVES)) / MOVES;
    return { book, outcome, asked: askedFrom(new URLSearchParams({ third, [third]: String(value) })) };
  });
}

function known<T>(question: T | null): T {
  if (question === null) throw new Error("The build has no map.");
  return question;
}

/** Maps over diameter and K_v. */
const questions = (drag: Drag): MapQuestion[] =>
  movesOf(drag, WARM + MOVES).map(({ book, outcome, asked }) =>
    known(questionOf(book, outcome, asked, POINTS)),
  );

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

const CHANCE_MOVES = 8;

const seconds = (work: () => void): number => {
  const start = performance.now();
  work();
  return (performance.now() - start) / MILLISECONDS;
};

/** The median of a few moves, the first of them left out: it warms. */
const middleOf = (times: readonly number[]): number => percentile(times.slice(1), 0.5);

function timedChance(drag: Drag): ChanceTimes {
  const moves = movesOf(drag, CHANCE_MOVES);
  const nodes = (closeness: keyof typeof CLOSENESS) =>
    middleOf(
      moves.map(({ book, outcome, asked }) => {
        const question = known(chanceQuestion(book, outcome, asked, CLOSENESS[closeness]));
        return seconds(() => replyTo(question));
      }),
    );
  const field = middleOf(
    moves.map(({ book, outcome, asked }) => {
      const question = known(questionOf(book, outcome, asked, POINTS));
      const whole = partsOf(question, 1).map((range) => mapPart(question, range));
      const drawn = mapOf(question, whole);
      const reply = replyTo(known(chanceQuestion(book, outcome, asked, CLOSENESS.dragged)));
      if ("problem" in reply) throw new Error(reply.problem);
      return seconds(() => chanceOver(question, drawn, reply.answered));
    }),
  );
  return { nodes: { dragged: nodes("dragged"), settled: nodes("settled") }, field };
}

/** A map of 200 by 200 points solved in full in two threads, while a third setting is dragged; the chance of holding over it. @param file - that starts serveTasks in a thread */
export function timedMap(file: string): Promise<MapTimes> {
  return withThreads(file, THREADS, async (workers) => {
    const ducted = await timed(workers, questions(DRAGS.ducted));
    const open = await timed(workers, questions(DRAGS.open));
    const chance = { ducted: timedChance(DRAGS.ducted), open: timedChance(DRAGS.open) };
    return { points: POINTS * POINTS, drawn: { ducted, open }, chance };
  });
}
