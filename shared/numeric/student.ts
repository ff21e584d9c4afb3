import { OutOfRangeError } from "./errors.ts";
import { incompleteBeta } from "./incompleteBeta.ts";
import { requireShare, type Tails } from "./incompleteGamma.ts";
import { solveIncreasing } from "./solveIncreasing.ts";

/** Shares nearer to ½ than this are found by their distance from ½, others by their tail. */
const CENTRAL = 0.25;

/** @returns share outside ±t as `lower`, inside as `upper` */
function insideOutside(t: number, dof: number): Tails {
  const ratio = (t / dof) * t;
  const outer = 1 / (1 + ratio);
  return incompleteBeta(dof / 2, 1 / 2, outer, ratio > 1 ? 1 - outer : ratio * outer);
}

/**
 * Quantile of Student's t distribution.
 *
 *     F(t) = p
 *
 * @param p - share below, from 1e-150 to below 1 [-]
 * @param dof - degrees of freedom, any real number ≥ 1 [-]
 * @returns t [-]
 * @throws {OutOfRangeError} on p outside that range, dof below 1 or infinite
 *
 * Valid for any dof ≥ 1. Source: {@link studentCdf}, inverted
 */
export function studentQuantile(p: number, dof: number): number {
  requireShare("p", p);
  requireDof(dof);
  const fromMiddle = p - 1 / 2;
  if (fromMiddle === 0) return 0;
  const inside = 2 * Math.abs(fromMiddle);
  const outside = 2 * Math.min(p, 1 - p);
  const distance =
    inside < 2 * CENTRAL
      ? (t: number) => Math.log(insideOutside(t, dof).upper / inside)
      : (t: number) => Math.log(outside / insideOutside(t, dof).lower);
  return Math.sign(fromMiddle) * solveIncreasing(distance, inside);
}

function requireDof(dof: number): void {
  if (!(dof >= 1 && dof < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError("dof", dof, "finite, 1 or greater");
}
