import type { Worker } from "node:worker_threads";
import { frontOf } from "../../shared/decide/choose/front.ts";
import { prepare } from "../../shared/decide/choose/prepare.ts";
import { rankedPage } from "../../shared/decide/choose/rank.ts";
import { gathered, meetingSets } from "../../shared/decide/choose/values.ts";
import { SWEEP_SIZE } from "./sweepCases.ts";
import { sweepQuestion } from "./sweepQuestion.ts";
import { inThreads, withThreads } from "./threads.ts";
import { median, memoryNow, peakMemory, secondsOf } from "./timing.ts";

const RUNS = 5;
const RUNS_ALONE = 3;
const PAGE = { skip: 0, count: 100 };
const SETS_PER_MOTOR = SWEEP_SIZE / 100;
const MOTORS = [1, 10, 100];

export interface ChooseTimes {
  readonly sets: number;
  readonly threads: number;
  /** median of a whole choosing: solved, judged, ranked, non-dominated [s] */
  readonly seconds: number;
  /** the same points solved and nothing else, in the same threads [s] */
  readonly bareSeconds: number;
  /** median over pairs of runs */
  readonly ratioToBare: number;
  readonly meeting: number;
  readonly nonDominated: number;
}

/** One size of question in some threads, the bare solves and the choosing in turn. */
async function timedIn(workers: readonly Worker[], motors: number, runs: number): Promise<ChooseTimes> {
  const prepared = prepare(sweepQuestion(motors));
  const sets = motors * SETS_PER_MOTOR;
  let [meeting, nonDominated] = [0, 0];
  const choose = async () => {
    const results = gathered((await inThreads(workers, "choose", sets)).chunks);
    rankedPage(prepared, results, { column: "margin", want: "most" }, PAGE);
    const among = meetingSets(results);
    [meeting, nonDominated] = [among.length, frontOf(prepared, results, undefined, among).length];
  };
  const bareSolves = () => inThreads(workers, "bare", sets);
  await bareSolves();
  await choose();
  const [bare, whole]: [number[], number[]] = [[], []];
  for (let run = 0; run < runs; run++) {
    bare.push(await secondsOf(bareSolves));
    whole.push(await secondsOf(choose));
  }
  return {
    sets,
    threads: workers.length,
    seconds: median(whole),
    bareSeconds: median(bare),
    ratioToBare: median(whole.map((seconds, i) => seconds / bare[i])),
    meeting,
    nonDominated,
  };
}

export interface ChooseBench extends ChooseTimes {
  readonly oneThread: ChooseTimes;
  readonly scaling: readonly { readonly sets: number; readonly setsPerSecond: number }[];
  /** of the whole process, threads included, beyond what it held before [MB] */
  readonly peakMemory: number;
}

/**
 * A million sets chosen from, end to end, against the bare solves of the same million in as many threads; and fewer sets.
 *
 *     solve, limits, time, first page by margin, non-dominated over margin, mass and time
 *
 * @param file - that starts serveTasks in a thread
 * @returns medians [s], memory [MB]
 */
export async function timedChoose(file: string): Promise<ChooseBench> {
  const before = memoryNow();
  const two = await withThreads(file, 2, async (workers) => {
    const all: ChooseTimes[] = [];
    for (const motors of MOTORS) all.push(await timedIn(workers, motors, RUNS));
    return all;
  });
  const peak = peakMemory();
  const oneThread = await withThreads(file, 1, (workers) => timedIn(workers, 100, RUNS_ALONE));
  return {
    ...two[two.length - 1],
    oneThread,
    scaling: two.map(({ sets, seconds }) => ({ sets, setsPerSecond: sets / seconds })),
    peakMemory: peak - before,
  };
}
