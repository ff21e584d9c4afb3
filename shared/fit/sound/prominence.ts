import type { Spectrum } from "./spectrum.ts";

/** Lines whose median says how loud the noise is around them. */
const AROUND = 64;
/** A single line, however loud, says no more than this [dB]. */
const MOST = 40;

/** The side lobes of a Hann window lie so far under its peak beyond the third line: nothing below counts (Harris, Proc. IEEE 66 (1978) 51). */
const SIDE_LOBES = 1e-5;

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}

/** How far each line of a spectrum stands above the noise around it. */
export interface Prominence {
  /** 0 to 40 [dB] */
  readonly level: Float64Array;
  readonly step: number;
}

/**
 * How far each line stands above the median of the lines around it.
 *
 * @returns by line, cut to 0…40 [dB]
 */
export function prominenceOf({ power, step }: Spectrum): Prominence {
  const floors: number[] = [];
  for (let from = 0; from < power.length; from += AROUND)
    floors.push(median([...power.subarray(from, from + AROUND)]));
  const quietest = power.reduce((most, each) => Math.max(most, each), 0) * SIDE_LOBES || Number.MIN_VALUE;
  const level = power.map((value, k) => {
    // between the middles of two blocks
    const at = Math.min(floors.length - 1, Math.max(0, k / AROUND - 0.5));
    const [low, part] = [Math.floor(at), at % 1];
    const floor = floors[low] * (1 - part) + (floors[low + 1] ?? floors[low]) * part;
    const decibels = 10 * Math.log10(Math.max(value, quietest) / Math.max(floor, quietest));
    return Math.min(MOST, Math.max(0, decibels));
  });
  return { level, step };
}

/** @returns the highest line within one of a frequency [dB] */
export function levelAt({ level, step }: Prominence, frequency: number): number {
  const k = Math.round(frequency / step);
  if (k < 1 || k >= level.length - 1) return 0;
  return Math.max(level[k - 1], level[k], level[k + 1]);
}
