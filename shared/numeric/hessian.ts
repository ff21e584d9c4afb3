import { requireFinite } from "./errors.ts";

/** Step of a fourth-order second difference where rounding (ε/h²) and truncation (h⁴) are alike. */
const HESSIAN_STEP = Number.EPSILON ** (1 / 6);

/**
 * Second derivatives of a smooth function, numerically.
 *
 *     ∂²f/∂xⱼ∂xₖ by central differences with steps h and h/2, combined to order h⁴
 *
 * @param f - function, admissible at steps of 0.0025 of each variable's size around x [any unit]
 * @param x - where to take them [unit of each variable]
 * @param sizes - typical size of each variable, |xⱼ| (1 at 0) unless given [unit of each variable]
 * @returns the symmetric matrix, row by row, to about 9 digits of its largest terms [unit of f over units of two variables]
 * @throws {OutOfRangeError} where a second difference is not finite
 *
 * Valid for functions smooth over the steps. Source: Richardson extrapolation of the central second difference
 */
export function hessian(
  f: (x: readonly number[]) => number,
  x: readonly number[],
  sizes?: readonly number[],
): number[][] {
  const steps = x.map((value, j) => HESSIAN_STEP * (sizes?.[j] ?? (value === 0 ? 1 : Math.abs(value))));
  const matrix = x.map(() => new Array<number>(x.length).fill(0));
  for (let j = 0; j < x.length; j += 1)
    for (let k = 0; k <= j; k += 1) {
      const [coarse, fine] = [1, 1 / 2].map((share) => secondDifference(f, x, j, k, steps, share));
      matrix[j][k] = requireFinite(`second derivative ${j}, ${k}`, (4 * fine - coarse) / 3);
      matrix[k][j] = matrix[j][k];
    }
  return matrix;
}

function secondDifference(
  f: (x: readonly number[]) => number,
  x: readonly number[],
  j: number,
  k: number,
  steps: readonly number[],
  share: number,
): number {
  const [hj, hk] = [steps[j] * share, steps[k] * share];
  const at = (a: number, b: number) =>
    f(x.map((value, i) => value + (i === j ? a * hj : 0) + (i === k ? b * hk : 0)));
  if (j === k) return (at(1, 0) - 2 * at(0, 0) + at(-1, 0)) / (hj * hj);
  return (at(1, 1) - at(1, -1) - at(-1, 1) + at(-1, -1)) / (4 * hj * hk);
}
