import type { Digits } from "./places.ts";
import { type Part, type Problem, sizesIn, skirtsIn } from "./problem.ts";

/** What the parts bring to the stacks of a housing, stack by stack, by their digits [m]; NaN: not known. */
export interface StackSums {
  readonly fixed: number;
  readonly motors: Float64Array;
  readonly sizedRotors: Float64Array;
  readonly packs: Float64Array;
  readonly fittedSkirts: Float64Array;
}

/**
 * What every part adds to the lower worst case of each stack of the housing.
 *
 *     c_low = fixed + Σ over parts of s·q·L − q·t
 *
 * @param problem - the question
 * @returns the summands of each stack [m]
 *
 * Valid for any question; none without stacks. Source: docs/method/fit-up.md, Stack
 */
export function stackSumsOf(problem: Problem): StackSums[] {
  const { fixed, motors, packs } = problem;
  return (fixed.stacks ?? []).map((own, i) => {
    const listed = (parts: readonly Pick<Part, "stacked">[]) =>
      Float64Array.from(parts, ({ stacked }) => (stacked === undefined ? 0 : (stacked[i] ?? Number.NaN)));
    return {
      fixed: own,
      motors: listed(motors),
      sizedRotors: listed(sizesIn(problem)),
      packs: listed(packs),
      fittedSkirts: listed(skirtsIn(problem)),
    };
  });
}

/** @returns least clearance of a combination over all stacks, at the worst case [m]; infinite without stacks, NaN where a size isn't known */
export function clearanceAt(stacks: readonly StackSums[], digits: Omit<Digits, "duty">): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { fixed, motors, sizedRotors, packs, fittedSkirts } of stacks)
    least = Math.min(
      least,
      fixed +
        motors[digits.motor] +
        sizedRotors[digits.sizedRotor] +
        packs[digits.pack] +
        fittedSkirts[digits.fittedSkirt],
    );
  return least;
}
