import { NoConvergenceError } from "./errors.ts";
import { findRoot } from "./root.ts";

const WIDENING = 4;
const MAX_WIDENINGS = 1000;

/**
 * The positive zero of an increasing function, wherever it lies.
 *
 *     f(x) = 0, x > 0
 *
 * @param f - increasing function of a positive number [-]
 * @param near - where to look first, > 0 [-]
 * @returns x [-]
 * @throws {NoConvergenceError} where f has one sign at all positive numbers, or is NaN
 *
 * Valid for continuous f. Source: {@link findRoot}, its bracket widened from `near` by factors of four
 */
export function solveIncreasing(f: (x: number) => number, near: number): number {
  const above = f(near) > 0;
  const factor = above ? 1 / WIDENING : WIDENING;
  let inner = near;
  for (let i = 0; i < MAX_WIDENINGS; i += 1) {
    const outer = inner * factor;
    if (!(outer > 0 && outer < Number.POSITIVE_INFINITY)) break;
    if (f(outer) > 0 !== above) return findRoot(f, Math.min(inner, outer), Math.max(inner, outer)).root;
    inner = outer;
  }
  throw new NoConvergenceError("the function keeps its sign at all positive numbers", MAX_WIDENINGS);
}
