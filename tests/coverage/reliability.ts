import type { Said } from "./covered.ts";

/** How often it held where a chance of about so much was said. */
export interface Reliability {
  /** 0.1, 0.2, … 0.9 */
  readonly about: number;
  readonly count: number;
  /** mean of the chances said, share that held [-] */
  readonly said: number;
  readonly held: number;
}

const TENTHS = [1, 2, 3, 4, 5, 6, 7, 8, 9];

/** @returns a line for each tenth from 0.1 to 0.9, of the chances said that lie nearest to it */
export function reliabilityOf(all: readonly Said[]): Reliability[] {
  return TENTHS.map((tenth) => {
    const near = all.filter(({ chance }) => Math.round(10 * chance) === tenth);
    const mean = (of: (each: Said) => number) => near.reduce((sum, each) => sum + of(each), 0) / near.length;
    return {
      about: tenth / 10,
      count: near.length,
      said: mean(({ chance }) => chance),
      held: mean(({ held }) => (held ? 1 : 0)),
    };
  });
}

/** @returns share that held less mean chance said, of chances of 0.05 to 0.95 [-]; NaN where none lies there */
export function heldLessSaid(all: readonly Said[]): number {
  const open = all.filter(({ chance }) => chance > 0.05 && chance < 0.95);
  return open.reduce((sum, { chance, held }) => sum + (held ? 1 : 0) - chance, 0) / open.length;
}
