/** The part of a fit that says how sure the curve is: (XᵀWX)⁻¹, from its covariance over its squared residual sd. */
export type Information = readonly (readonly number[])[];

/** @returns (XᵀWX)⁻¹ of a polynomial fit; null where the points leave no residual to judge by */
export function informationOf(fit: {
  readonly covariance: readonly (readonly number[])[];
  readonly residualSd: number;
}): Information | null {
  if (fit.covariance.length === 0 || !(fit.residualSd > 0)) return null;
  return fit.covariance.map((row) => row.map((value) => value / fit.residualSd ** 2));
}

const powers = (x: number, count: number) => Array.from({ length: count }, (_, k) => x ** k);

function times(inverse: Information, vector: readonly number[]): number[] {
  return inverse.map((row) => row.reduce((sum, value, k) => sum + value * vector[k], 0));
}

const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, k) => sum + value * b[k], 0);

/** @returns variance of the fitted curve at x over the variance of one reading of weight 1: xᵀ(XᵀWX)⁻¹x */
export function curveVariance(inverse: Information, x: number): number {
  const row = powers(x, inverse.length);
  return dot(row, times(inverse, row));
}

/**
 * What the information becomes when readings are added at one place (Sherman and Morrison).
 *
 *     A′ = A − n·w·(Ax)(Ax)ᵀ/(1 + n·w·xᵀAx)
 *
 * @param inverse - A = (XᵀWX)⁻¹
 * @param x - where they are taken
 * @param weight - n·w, of all of them together
 */
export function withReadings(inverse: Information, x: number, weight: number): number[][] {
  const row = powers(x, inverse.length);
  const image = times(inverse, row);
  const factor = weight / (1 + weight * dot(row, image));
  return inverse.map((each, i) => each.map((value, k) => value - factor * image[i] * image[k]));
}

/**
 * How much of what fixes the curve each group of readings brings: the sum of its leverages over all of them.
 *
 *     share = Σ wᵢ·xᵢᵀAxᵢ / p
 *
 * @returns one share a group, 0…1; together 1
 */
export function sharesOf(
  inverse: Information,
  readings: readonly { readonly x: number; readonly weight: number; readonly group: number }[],
  groups: number,
): number[] {
  const shares = new Array<number>(groups).fill(0);
  for (const { x, weight, group } of readings)
    shares[group] += (weight * curveVariance(inverse, x)) / inverse.length;
  return shares;
}
