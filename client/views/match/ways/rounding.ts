import type { Reach } from "../../../../shared/decide/ways/reach.ts";

/** Keeps a value that lies on the grid there in spite of rounding. */
const GRID_SLACK = 1e-9;

/** @returns a number rounded to so many decimals, to the side on which the target is met */
export function roundedSafely(shown: number, bound: Reach["bound"], decimals: number): number {
  const steps = shown * 10 ** decimals;
  const slack = GRID_SLACK * Math.max(1, Math.abs(steps));
  const whole = bound === "at-most" ? Math.floor(steps + slack) : Math.ceil(steps - slack);
  return whole / 10 ** decimals;
}

/** @returns decimals at which a range is still one, such as 47.2 to 47.4: more than the handle shows where it needs them */
export function decimalsApart(from: number, to: number, decimals: number): number {
  for (let digits = decimals; digits < decimals + 3; digits++)
    if (roundedSafely(from, "at-least", digits) <= roundedSafely(to, "at-most", digits)) return digits;
  return decimals + 3;
}
