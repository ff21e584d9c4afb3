import type { Worker } from "node:worker_threads";
import { foremostCombinations, frontOf } from "#shared/decide/choose/front.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { rankedPage } from "#shared/decide/choose/rank.ts";
import { gathered, meetingCombinations } from "#shared/decide/choose/values.ts";
import { SWEEP_SIZE } from "./sweepCases.ts";
import { sweepQuestion } from "./sweepQuestion.ts";
import { inThreads, withThreads } from "./threads.ts";
import { secondsOf } from "./timing.ts";

const RUNS = 5;
const RUNS_ALONE = 3;
const PAGE = { skip: 0, count: 100 };
const COMBINATIONS_PER_MOTOR = SWEEP_SIZE / 100;
const MOTORS = [1, 10, 100];

export interface ChooseTimes {
  readonly sets: number;
  readonly threads: number;
  /** a whole choosing, the fastest of a few: solved, judged, ranked, non-dominated [s] */
  readonly seconds: number;
  /** the same combinations' operating points solved by the engine and not judged, in the same threads [s] */
  readonly bareSeconds: number;
  readonly ratioToBare: number;
  /** against the sweep's own loop, whose smaller solver knows cold windings alone */
  readonly ratioToSweep: number;
  readonly meeting: number;
  readonly nonDominated: number;
}

/** One size of question in some threads, the bare solves and the choosing in turn. */
async function timedIn(workers: readonly Worker[], motors: number, runs: number): Promise<ChooseTimes> {
  const prepared = prepare(sweepQuestion(motors));
  const sets = motors * COMBINATIONS_PER_MOTOR;
  let [meeting, nonDominated] = [0, 0];
  const choose = async () => {
    const results = gathered((await inThreads(workers, "choose", sets)).chunks);
    // As the server answers first: the admissible combinations, a page of them, and the front.
    const admissible = meetingCombinations(results);
    rankedPage(prepared, results, { column: "margin", want: "most" }, PAGE, admissible);
    const front = frontOf(prepared, results, undefined, foremostCombinations(results));
    [meeting, nonDominated] = [admissible.length, front.length];
  };
  const work = {
    whole: choose,
    bare: () => inThreads(workers, "solve", sets),
    sweep: () => inThreads(workers, "bare", sets),
  };
  const [whole, bare, sweep]: number[][] = [[], [], []];
  for (let run = 0; run <= runs; run++) {
    const times = [await secondsOf(work.whole), await secondsOf(work.bare), await secondsOf(work.sweep)];
    // The first round compiles.
    for (const [i, list] of [whole, bare, sweep].entries()) if (run > 0) list.push(times[i]);
  }
  const [seconds, bareSeconds, sweepSeconds] = [whole, bare, sweep].map((list) => Math.min(...list));
  return {
    sets,
    threads: workers.length,
    seconds,
    bareSeconds,
    ratioToBare: seconds / bareSeconds,
    ratioToSweep: seconds / sweepSeconds,
    meeting,
    nonDominated,
  };
}

export interface ChooseBook extends ChooseTimes {
  readonly oneThread: ChooseTimes;
  readonly scaling: readonly { readonly sets: number; readonly setsPerSecond: number }[];
}

/**
 * A million combinations chosen from, end to end, against the bare solves of the same million in as many threads; and fewer combinations.
 *
 *     solve, limits, time, first page by margin, non-dominated over margin, mass and time
 *
 * @param file - that starts serveTasks in a thread
 * @returns the fastest of a few runs each [s]
 */
export async function timedChoose(file: string): Promise<ChooseBook> {
  const two = await withThreads(file, 2, async (workers) => {
    const all: ChooseTimes[] = [];
    for (const motors of MOTORS) all.push(await timedIn(workers, motors, RUNS));
    return all;
  });
  const oneThread = await withThreads(file, 1, (workers) => timedIn(workers, 100, RUNS_ALONE));
  return {
    ...two[two.length - 1],
    oneThread,
    scaling: two.map(({ sets, seconds }) => ({ sets, setsPerSecond: sets / seconds })),
  };
}
