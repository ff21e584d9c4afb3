import { findRoot } from "../numeric/root.ts";

/** Steps outwards, each twice the last, before a root counts as infinitely far off. */
const MAX_STEPS = 60;

/**
 * Root of a falling function, looked for outwards from a place in steps that double.
 *
 *     f(x) = 0, f falling
 *
 * @param f - falling function [any unit]
 * @param start - where to begin, between the limits [unit of x]
 * @param step - first step [unit of x], > 0
 * @param least - no root is looked for below [unit of x]
 * @param most - nor above [unit of x]
 * @returns the root [unit of x], or null where f keeps its sign up to the limits
 * @throws {NoConvergenceError} where f is not a number
 *
 * Valid for continuous f. Source: {@link findRoot}
 */
export function fallingRoot(
  f: (x: number) => number,
  start: number,
  step: number,
  least: number,
  most: number,
): number | null {
  const first = f(start);
  if (first === 0) return start;
  const direction = first > 0 ? 1 : -1;
  let near = start;
  for (let i = 0, reach = step; i < MAX_STEPS; i += 1, reach *= 2) {
    const far = Math.min(most, Math.max(least, near + direction * reach));
    if (far === near) return null;
    if (f(far) * direction <= 0) return findRoot(f, Math.min(near, far), Math.max(near, far)).root;
    near = far;
  }
  return null;
}
