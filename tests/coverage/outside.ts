import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { quantileOf } from "#tests/support/csvFixture.ts";
import type { Outside } from "#tests/support/outside.ts";

/** An outside measurement and what is said of it. */
export interface OutsideLine extends Omit<Outside, "errors"> {
  readonly count: number;
  readonly median: number;
  readonly low: number;
  readonly high: number;
  /** furthest off, with its sign */
  readonly worst: number;
}

/** @returns a line for each that the tests of tests/published handed on, by name */
export function outsideLines(folder: string): OutsideLine[] {
  const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
  return files.sort().map((name) => {
    const { errors, ...said } = JSON.parse(readFileSync(join(folder, name), "utf8")) as Outside;
    return {
      ...said,
      count: errors.length,
      median: quantileOf(errors, 0.5),
      low: quantileOf(errors, 0.05),
      high: quantileOf(errors, 0.95),
      worst: errors.reduce((worst, error) => (Math.abs(error) > Math.abs(worst) ? error : worst), 0),
    };
  });
}
