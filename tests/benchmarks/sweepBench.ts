import { withCompiledSweep } from "./compiledSweep.ts";
import { runSweep, SWEEP_SIZE, type SweepSums, sweepTables } from "./sweepCases.ts";
import { inThreads, withThreads } from "./threads.ts";
import { secondsOf } from "./timing.ts";

/** The fastest of so many counts: whatever else a machine does only ever slows a run. */
const RUNS = 9;
const THREADS = 2;

export interface SweepTimes {
  /** one core */
  readonly solvesPerSecond: number;
  /** of the same loop in C at -O2, one core; null where no C compiler is found */
  readonly ratioToC: number | null;
  /** [Pa, rad/s, m³/s] */
  readonly sums: SweepSums;
  readonly compiledSolvesPerSecond: number | null;
  readonly twoThreads: { readonly solvesPerSecond: number; readonly sums: SweepSums };
}

/** One core and C in turn, so that whatever else the machine does weighs on both. */
async function onOneCore(sweep: (() => number) | null) {
  const tables = sweepTables();
  runSweep(tables, 0, SWEEP_SIZE / 10);
  let own = 0;
  let compiled: number | null = null;
  let sums: SweepSums = { pressure: 0, speed: 0, flow: 0 };
  for (let run = 0; run < RUNS; run++) {
    const seconds = await secondsOf(() => {
      sums = runSweep(tables);
    });
    own = Math.max(own, SWEEP_SIZE / seconds);
    const other = sweep?.();
    if (other) compiled = Math.max(compiled ?? 0, other);
  }
  return {
    solvesPerSecond: own,
    compiledSolvesPerSecond: compiled,
    ratioToC: compiled === null ? null : own / compiled,
    sums,
  };
}

async function onTwo(file: string) {
  return withThreads(file, THREADS, async (workers) => {
    let { sums } = await inThreads(workers, "bare", SWEEP_SIZE);
    const seconds: number[] = [];
    for (let run = 0; run < RUNS; run++)
      seconds.push(
        await secondsOf(async () => {
          sums = (await inThreads(workers, "bare", SWEEP_SIZE)).sums;
        }),
      );
    return { solvesPerSecond: SWEEP_SIZE / Math.min(...seconds), sums };
  });
}

/**
 * The sweep of a million coupled operating points, on one core, on two and in C.
 *
 * @param file - that starts serveTasks in a thread
 * @returns the fastest of nine runs each
 */
export async function timedSweep(file: string): Promise<SweepTimes> {
  const oneCore = await withCompiledSweep(onOneCore);
  return { ...oneCore, twoThreads: await onTwo(file) };
}
