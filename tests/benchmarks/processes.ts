import { readdirSync, readFileSync } from "node:fs";

const KILOBYTE = 1024;
const BYTES_PER_MEGABYTE = 1e6;

/** Linux alone says it. */
const isKnown = process.platform === "linux";

function statusOf(pid: number, key: "VmRSS" | "VmHWM"): number {
  const [, kilobytes] =
    new RegExp(`^${key}:\\s+(\\d+) kB$`, "m").exec(readFileSync(`/proc/${pid}/status`, "utf8")) ?? [];
  return (Number(kilobytes) * KILOBYTE) / BYTES_PER_MEGABYTE;
}

/** @returns what a process holds now [MB]; null where the system does not say */
export const memoryOf = (pid: number): number | null => (isKnown ? statusOf(pid, "VmRSS") : null);

/** @returns the most that a process has held, its threads included [MB]; null where the system does not say */
export const peakOf = (pid: number): number | null => (isKnown ? statusOf(pid, "VmHWM") : null);

/** @returns how many files and connections a process has open; null where the system does not say */
export const handlesOf = (pid: number): number | null =>
  isKnown ? readdirSync(`/proc/${pid}/fd`).length : null;

/** Ticks of a second, as Linux counts processor time for programs (USER_HZ). */
const TICKS = 100;

/** @returns the processor time that a process has taken, its threads included [s]; null where the system does not say */
export function processorOf(pid: number): number | null {
  if (!isKnown) return null;
  const fields = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ").pop()?.split(" ") ?? [];
  // utime and stime, fields 14 and 15 of proc(5); the third is the first behind the name.
  return (Number(fields[11]) + Number(fields[12])) / TICKS;
}
