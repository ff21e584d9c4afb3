import { OutOfRangeError } from "./errors.ts";

/** A pivot this small, relative to the variance it comes from, is rounding: that number follows from the others. */
const ROUNDING = 1e-10;
const COVARIANCE = "a covariance: positive semi-definite";

type Matrix = readonly (readonly number[])[];

/** Refuses what is no square, symmetric matrix of finite numbers with variances ≥ 0. */
function checkCovariance(name: string, matrix: Matrix): void {
  matrix.forEach((row, i) => {
    if (row.length !== matrix.length)
      throw new OutOfRangeError(`${name}.${i}`, row.length, `a row of ${matrix.length} numbers`);
  });
  matrix.forEach((row, i) => {
    if (!(row[i] >= 0 && row[i] < Number.POSITIVE_INFINITY))
      throw new OutOfRangeError(`${name}.${i}.${i}`, row[i], "a variance, 0 or greater");
    for (let j = 0; j < i; j += 1) {
      const size = Math.sqrt(row[i] * matrix[j][j]);
      if (!(Math.abs(row[j] - matrix[j][i]) <= ROUNDING * size))
        throw new OutOfRangeError(`${name}.${i}.${j}`, row[j], `the same as at ${j}.${i}: symmetric`);
      if (Math.abs(row[j]) > size * (1 + ROUNDING))
        throw new OutOfRangeError(`${name}.${i}.${j}`, row[j], COVARIANCE);
    }
  });
}

/** Takes out of what is left all that goes with its largest diagonal; the column that does. */
function takeColumn(left: number[][], pivot: number): Float64Array {
  const root = Math.sqrt(left[pivot][pivot]);
  const column = Float64Array.from(left, (row) => row[pivot] / root);
  left.forEach((row, i) => {
    for (let j = 0; j < row.length; j += 1) row[j] -= column[i] * column[j];
  });
  return column;
}

/** What is left once every pivot is rounding must be rounding too. */
function checkRest(name: string, covariance: Matrix, left: Matrix): void {
  left.forEach((row, i) => {
    row.forEach((value, j) => {
      if (!(Math.abs(value) <= (i === j ? ROUNDING : Math.sqrt(ROUNDING))))
        throw new OutOfRangeError(`${name}.${i}.${j}`, covariance[i][j], COVARIANCE);
    });
  });
}

/**
 * Root of a covariance, also of one in which some numbers follow from others.
 *
 *     C = L·Lᵀ, by columns of largest pivot first, on the matrix of correlations
 *
 * @param name - of the matrix, for a refusal [-]
 * @param covariance - symmetric, positive semi-definite [product of two units]
 * @returns L by columns, as many as the rank: column k holds what the k-th independent standard normal number adds to each [unit of each]
 * @throws {OutOfRangeError} with the place in the matrix, on one that is not square, not symmetric, not finite, or no covariance
 *
 * Valid for correlations up to ±1; a pivot below 1e-10 counts as 0. Source: Golub & Van Loan, Matrix Computations, 4th ed., section 4.2.8 (pivoted Cholesky)
 */
export function covarianceRoot(name: string, covariance: Matrix): Float64Array[] {
  checkCovariance(name, covariance);
  const sd = covariance.map((row, i) => Math.sqrt(row[i]));
  const left = covariance.map((row, i) => row.map((c, j) => (sd[i] * sd[j] > 0 ? c / (sd[i] * sd[j]) : 0)));
  const columns: Float64Array[] = [];
  while (columns.length < sd.length) {
    const diagonal = left.map((row, i) => row[i]);
    const most = Math.max(...diagonal);
    if (most <= ROUNDING) break;
    columns.push(takeColumn(left, diagonal.indexOf(most)).map((value, i) => value * sd[i]));
  }
  checkRest(name, covariance, left);
  return columns;
}
