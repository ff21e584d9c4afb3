import { OutOfRangeError } from "./errors.ts";
import { incompleteGamma, requireShare } from "./incompleteGamma.ts";
import { solveIncreasing } from "./solveIncreasing.ts";

/**
 * Quantile of the χ² distribution.
 *
 *     P(ν/2, x/2) = p
 *
 * @param p - share below, from 1e-150 to below 1 [-]
 * @param dof - degrees of freedom ν, any real number ≥ 1 [-]
 * @returns x [-]
 * @throws {OutOfRangeError} on p outside that range, dof below 1 or infinite
 *
 * Valid for any dof ≥ 1. Source: Abramowitz & Stegun 26.4.19, inverted
 */
export function chiSquareQuantile(p: number, dof: number): number {
  requireShare("p", p);
  if (!(dof >= 1 && dof < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError("dof", dof, "finite, 1 or greater");
  const distance =
    p < 1 / 2
      ? (x: number) => Math.log(incompleteGamma(dof / 2, x / 2).lower / p)
      : (x: number) => Math.log((1 - p) / incompleteGamma(dof / 2, x / 2).upper);
  return solveIncreasing(distance, dof);
}
