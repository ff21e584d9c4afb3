/** How sure least squares are of their coefficients, per variance of one reading of weight 1: (XᵀWX)⁻¹. */
export type Information = readonly (readonly number[])[];

/** @returns (XᵀWX)⁻¹ of a least-squares fit, from its covariance over its squared residual sd; null where the readings leave no residual */
export function informationOf(fit: {
  readonly covariance: readonly (readonly number[])[];
  readonly residualSd: number;
}): Information | null {
  if (fit.covariance.length === 0 || !(fit.residualSd > 0)) return null;
  return fit.covariance.map((row) => row.map((value) => value / fit.residualSd ** 2));
}

/** @returns 1, x, x² … : the design row of a polynomial */
export const powers = (x: number, count: number): number[] => Array.from({ length: count }, (_, k) => x ** k);

function times(matrix: Information, vector: readonly number[]): number[] {
  return matrix.map((row) => row.reduce((sum, value, k) => sum + value * vector[k], 0));
}

const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, k) => sum + value * b[k], 0);

/**
 * Variance of what a fit says at one design row.
 *
 *     xᵀAx
 *
 * @param matrix - A: a covariance, or (XᵀWX)⁻¹ [product of the coefficients' units]
 * @param row - x, the design row [unit of response over unit of each coefficient]
 * @returns the variance [unit of response squared], 0 where rounding would leave it below
 *
 * Valid for symmetric A. Source: Draper & Smith, Applied Regression Analysis, 3rd ed., section 5.2
 */
export function varianceAt(matrix: Information, row: readonly number[]): number {
  return Math.max(0, dot(row, times(matrix, row)));
}

/**
 * What the information becomes when readings are added at one place.
 *
 *     A′ = A − n·w·(Ax)(Ax)ᵀ/(1 + n·w·xᵀAx)
 *
 * @param inverse - A = (XᵀWX)⁻¹ [product of the coefficients' units]
 * @param row - x, their design row [unit of response over unit of each coefficient]
 * @param weight - n·w, of all of them together [-]
 * @returns A′, as A
 *
 * Valid for A of any rank. Source: Sherman & Morrison, Ann. Math. Stat. 21 (1950) 124–127
 */
export function withReadings(inverse: Information, row: readonly number[], weight: number): number[][] {
  const image = times(inverse, row);
  const factor = weight / (1 + weight * dot(row, image));
  return inverse.map((each, i) => each.map((value, k) => value - factor * image[i] * image[k]));
}

export interface GroupedRow {
  readonly row: readonly number[];
  readonly weight: number;
  /** 0, 1 … : the test that it belongs to */
  readonly group: number;
}

/**
 * How much of what fixes a fit each group of readings brings: its leverages over all of them.
 *
 *     share = Σ_group wᵢ·xᵢᵀAxᵢ / Σ wᵢ·xᵢᵀAxᵢ
 *
 * @param inverse - A = (XᵀWX)⁻¹ of the fit that all readings are in [product of the coefficients' units]
 * @param readings - design row [unit of response over unit of each coefficient], weight, group [-]
 * @param groups - how many there are [-]
 * @returns one share a group, 0…1, together 1 [-]
 *
 * Valid for linear models and those linearised at their answer. Source: Cook & Weisberg, Residuals and Influence in Regression (1982), section 2.1
 */
export function sharesOf(inverse: Information, readings: readonly GroupedRow[], groups: number): number[] {
  const sums = new Array<number>(groups).fill(0);
  for (const { row, weight, group } of readings) sums[group] += weight * varianceAt(inverse, row);
  const total = sums.reduce((sum, each) => sum + each, 0);
  return sums.map((each) => (total > 0 ? each / total : 0));
}
