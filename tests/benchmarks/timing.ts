import { readFileSync } from "node:fs";

const MILLISECONDS = 1000;
const BYTES_PER_KILOBYTE = 1024;
const BYTES_PER_MEGABYTE = 1e6;

/** @returns what this process holds now [MB] */
export const memoryNow = (): number => process.memoryUsage.rss() / BYTES_PER_MEGABYTE;

/** Linux's own high-water mark of this process [kB]; the resource usage also remembers the process that started it. */
function highWaterMark(): number | null {
  if (process.platform !== "linux") return null;
  const [, kilobytes] = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync("/proc/self/status", "utf8")) ?? [];
  return kilobytes === undefined ? null : Number(kilobytes);
}

/** @returns the most that this process has held, its threads included [MB] */
export const peakMemory = (): number =>
  ((highWaterMark() ?? process.resourceUsage().maxRSS) * BYTES_PER_KILOBYTE) / BYTES_PER_MEGABYTE;

/** @returns the value that a share of all lies below, the next one up of an even count */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

export const median = (values: readonly number[]): number => percentile(values, 0.5);

/** @returns how long some work took [s] */
export async function secondsOf(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / MILLISECONDS;
}

export interface Repeated {
  /** of the first run in a process that has done nothing else [s] */
  readonly first: number;
  /** after as many runs for warmth [s] */
  readonly median: number;
  readonly runs: number;
}

/** Times work on this thread: the first time, and then the median once the engine has compiled it. */
export function repeated(work: () => unknown, runs: number): Repeated {
  const once = () => {
    const start = performance.now();
    work();
    return (performance.now() - start) / MILLISECONDS;
  };
  const first = once();
  for (let i = 0; i < runs; i++) once();
  return { first, median: median(Array.from({ length: runs }, once)), runs };
}
