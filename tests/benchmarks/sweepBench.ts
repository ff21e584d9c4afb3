import { compiledSolvesPerSecond } from "./compiledSweep.ts";
import { runSweep, SWEEP_SIZE, type SweepSums, sweepTables } from "./sweepCases.ts";
import { inThreads, withThreads } from "./threads.ts";
import { median, secondsOf } from "./timing.ts";

const RUNS = 5;
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
async function onOneCore() {
  const tables = sweepTables();
  runSweep(tables, 0, SWEEP_SIZE / 10);
  const [own, compiled, ratios]: [number[], number[], number[]] = [[], [], []];
  let sums: SweepSums = { pressure: 0, speed: 0, flow: 0 };
  for (let run = 0; run < RUNS; run++) {
    const seconds = await secondsOf(() => {
      sums = runSweep(tables);
    });
    own.push(SWEEP_SIZE / seconds);
    const other = compiledSolvesPerSecond(1);
    if (other === null) continue;
    compiled.push(other);
    ratios.push(SWEEP_SIZE / seconds / other);
  }
  return {
    solvesPerSecond: median(own),
    compiledSolvesPerSecond: compiled.length > 0 ? median(compiled) : null,
    ratioToC: ratios.length > 0 ? median(ratios) : null,
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
    return { solvesPerSecond: SWEEP_SIZE / median(seconds), sums };
  });
}

/**
 * The sweep of a million coupled operating points, on one core, on two and in C.
 *
 * @param file - that starts serveTasks in a thread
 * @returns medians of five runs; the ratio that of five pairs
 */
export async function timedSweep(file: string): Promise<SweepTimes> {
  return { ...(await onOneCore()), twoThreads: await onTwo(file) };
}
