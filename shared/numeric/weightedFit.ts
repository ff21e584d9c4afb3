import { type Doubled, doubledZeros, PreciseSum, store } from "./doubleDouble.ts";
import { NotEnoughDataError, OutOfRangeError, requireAllFinite, requireNonNegative } from "./errors.ts";
import { factorQr, inverseUpperColumns, type Qr, rowLeverages, upperFactor } from "./qr.ts";
import { type Problem, solveRefined } from "./refinedSolve.ts";
import { scaledConditioning } from "./singularValues.ts";

export interface LinearFit {
  readonly coefficients: number[];
  /** null where no degree of freedom is left to judge them by */
  readonly standardErrors: number[] | null;
  /** null where no degree of freedom is left to judge it by */
  readonly covariance: number[][] | null;
  /** √(weighted rss/dof), of a reading of weight 1; 0 where dof is 0 */
  readonly residualSd: number;
  /** share of the weighted variance that is explained; about 0 where a constant is in the model, else about the value 0; 0 where the response doesn't vary [-] */
  readonly rSquared: number;
  /** weighted sum of squared residuals */
  readonly rss: number;
  /** readings of positive weight less coefficients [-] */
  readonly dof: number;
  readonly fitted: number[];
  /** response less fitted */
  readonly residuals: number[];
  /** pull of each reading on its own fitted value, 0 to 1 [-] */
  readonly leverages: number[];
  /** of the weighted basis with its columns scaled to length 1 [-] */
  readonly conditionNumber: number;
}

/** The columns that a model is solved in, and how its coefficients follow from theirs. */
export interface Basis {
  readonly columns: number;
  /** element (i, j) at i + j·readings */
  readonly matrix: Doubled;
  /** coefficient i gets element (j·columns + i) times the solution's j */
  readonly transform: Doubled;
  readonly hasConstant: boolean;
  readonly describeDependence: (weakest: readonly number[]) => NotEnoughDataError;
}

/**
 * Weighted least squares in a given basis.
 *
 *     min Σ wᵢ(yᵢ − Σⱼ Bᵢⱼ zⱼ)², coefficients = transform·z
 *
 * @param basis - columns to solve in and the way back from them [any unit]
 * @param response - one value a row [any unit]
 * @param given - weights, 1 each when undefined [1 over unit of response squared, up to a factor]
 * @returns coefficients with their uncertainty, residuals and leverages [unit of response over unit of basis]
 * @throws {NotEnoughDataError} on fewer readings than columns, or columns that depend on each other
 * @throws {OutOfRangeError} on a number that is not finite, a negative weight, lists of unlike length
 *
 * Valid while κ·ε·(number of rows) < 1. Source: {@link solveRefined}; rank tolerance by Golub & Van Loan, Matrix Computations, section 5.5.8
 */
export function solveWeighted(
  basis: Basis,
  response: readonly number[],
  given: readonly number[] | undefined,
): LinearFit {
  const rows = response.length;
  requireLength("number of rows", basis.matrix.hi.length / basis.columns, rows);
  const weights = checkedWeights(given, rows);
  requireAllFinite("response", response);
  const dof = weights.reduce((count, w) => (w > 0 ? count + 1 : count), 0) - basis.columns;
  if (dof < 0) throw tooFewReadings(basis.columns, -dof);
  const problem = weighted(basis, response, weights);
  const qr = factorQr(problem.matrix.hi, rows, basis.columns);
  const { conditionNumber, weakest } = scaledConditioning(upperFactor(qr));
  if (!(conditionNumber * Number.EPSILON * rows < 1)) throw basis.describeDependence(weakest);
  const solution = solveRefined(problem, qr);
  const residuals = residualsOf(basis, response, solution);
  const rss = weights.reduce((sum, w, i) => sum + w * residuals[i] ** 2, 0);
  return {
    coefficients: transformed(basis, solution),
    ...doubt(basis, qr, rss, dof),
    rSquared: explainedShare(response, weights, rss, basis.hasConstant),
    rss,
    dof,
    fitted: response.map((value, i) => value - residuals[i]),
    residuals,
    leverages: Array.from(rowLeverages(qr)),
    conditionNumber,
  };
}

/** @throws {OutOfRangeError} unless as many are found as wanted */
export function requireLength(quantity: string, found: number, wanted: number): void {
  if (found !== wanted) throw new OutOfRangeError(quantity, found, `${wanted}, as many as the rest`);
}

function checkedWeights(given: readonly number[] | undefined, rows: number): readonly number[] {
  if (given === undefined) return new Array<number>(rows).fill(1);
  requireLength("number of weights", given.length, rows);
  for (const [i, w] of given.entries())
    if (!(w >= 0 && w < Number.POSITIVE_INFINITY)) requireNonNegative(`weights[${i}]`, w);
  return given;
}

/** Rows times √w, what their rounding leaves out kept in the low part. */
function weighted(basis: Basis, response: readonly number[], weights: readonly number[]): Problem {
  const rows = response.length;
  const matrix = doubledZeros(basis.matrix.hi.length);
  const scaled = doubledZeros(rows);
  const sum = new PreciseSum();
  for (let i = 0; i < rows; i += 1) {
    const factor = Math.sqrt(weights[i]);
    store(scaled, i, sum.start().addProduct(factor, response[i]));
    for (let at = i; at < matrix.hi.length; at += rows) {
      const { hi, lo } = basis.matrix;
      store(
        matrix,
        at,
        sum
          .start()
          .addProduct(factor, hi[at])
          .add(factor * lo[at]),
      );
    }
  }
  return { rows, columns: basis.columns, matrix, response: scaled };
}

function residualsOf(basis: Basis, response: readonly number[], solution: Doubled): number[] {
  const rows = response.length;
  const sum = new PreciseSum();
  return response.map((value, i) => 0 - sum.start(-value).addDot(basis.matrix, i, rows, solution).hi);
}

function transformed(basis: Basis, solution: Doubled): number[] {
  const { columns, transform } = basis;
  const sum = new PreciseSum();
  return Array.from({ length: columns }, (_, i) => sum.start().addDot(transform, i, columns, solution).hi);
}

/** cov = s²·MMᵀ with M = transform·R⁻¹: sums of squares, so that variances lose no digits. */
function doubt(
  basis: Basis,
  qr: Qr,
  rss: number,
  dof: number,
): Pick<LinearFit, "standardErrors" | "covariance" | "residualSd"> {
  if (dof === 0) return { standardErrors: null, covariance: null, residualSd: 0 };
  const variance = rss / dof;
  const m = inverseUpperColumns(qr).map((hi) => transformed(basis, { hi, lo: new Float64Array(hi.length) }));
  const spread = (i: number, j: number): number => m.reduce((sum, column) => sum + column[i] * column[j], 0);
  const covariance = m.map((_, i) => m.map((_unused, j) => variance * spread(i, j)));
  const residualSd = Math.sqrt(variance);
  return { standardErrors: m.map((_, i) => residualSd * Math.sqrt(spread(i, i))), covariance, residualSd };
}

function explainedShare(
  response: readonly number[],
  weights: readonly number[],
  rss: number,
  aboutMean: boolean,
): number {
  const total = weights.reduce((sum, w) => sum + w, 0);
  const mean = aboutMean ? weights.reduce((sum, w, i) => sum + w * response[i], 0) / total : 0;
  const reference = aboutMean ? response[weights.findIndex((w) => w > 0)] : 0;
  if (response.every((value, i) => !(weights[i] > 0) || value === reference)) return 0;
  return 1 - rss / weights.reduce((sum, w, i) => sum + w * (response[i] - mean) ** 2, 0);
}

function tooFewReadings(columns: number, missing: number): NotEnoughDataError {
  const readings = columns - missing;
  return new NotEnoughDataError(
    `${columns} coefficients need at least ${columns} readings, there are ${readings}.`,
    `Measure at ${missing} more settings.`,
  );
}
