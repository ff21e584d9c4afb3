import { centringOf, chebyshevColumns, powersOfChebyshev } from "./chebyshevBasis.ts";
import { type Doubled, doubledZeros } from "./doubleDouble.ts";
import { NotEnoughDataError, OutOfRangeError, requireAllFinite, requireFinite } from "./errors.ts";
import { type Basis, type LinearFit, requireLength, solveWeighted } from "./weightedFit.ts";

export type { LinearFit } from "./weightedFit.ts";

/** Share of the largest above which a column counts as part of the combination that can't be measured separately. */
const NOTICEABLE_SHARE = 0.1;

export interface LinearData {
  /** one row a reading, one column a coefficient [any unit] */
  readonly design: readonly (readonly number[])[];
  /** one value a reading [any unit] */
  readonly response: readonly number[];
  /** 1/variance of each reading up to a common factor; 1 each unless given, 0 leaves a reading out */
  readonly weights?: readonly number[];
}

/**
 * Linear model by weighted least squares.
 *
 *     min Σ wᵢ(yᵢ − Σⱼ xᵢⱼ bⱼ)²,  cov b = s²(XᵀWX)⁻¹,  s² = Σ wᵢeᵢ²/dof
 *
 * @param data - design row by row, response, weights [any unit, the same along a column]
 * @returns coefficients with their uncertainty, residuals and leverages [unit of response over unit of column]
 * @throws {NotEnoughDataError} on fewer readings than coefficients, or columns that depend on each other
 * @throws {OutOfRangeError} on a number that is not finite, a negative weight, lists of unlike length
 *
 * Valid for full rank to rounding; R² is about the mean when a column of the design is constant.
 * Source: column-scaled Householder QR with refinement in twice the precision (Golub & Van Loan, Matrix Computations, section 5.3; Björck 1967)
 */
export function fitLinear(data: LinearData): LinearFit {
  const { design, response } = data;
  const rows = design.length;
  const columns = design[0]?.length ?? 0;
  if (!(columns > 0)) throw new OutOfRangeError("columns of the design", columns, "1 or more");
  const matrix = doubledZeros(rows * columns);
  design.forEach((row, i) => {
    requireLength(`length of design[${i}]`, row.length, columns);
    for (let j = 0; j < columns; j += 1)
      matrix.hi[i + j * rows] = requireFinite(`design[${i}][${j}]`, row[j]);
  });
  const scales = scaleColumns(matrix, rows, columns);
  const transform = doubledZeros(columns * columns);
  scales.forEach((scale, j) => {
    transform.hi[j * columns + j] = 1 / scale;
  });
  const hasConstant = scales.some((_, j) => isConstant(matrix.hi.subarray(j * rows, (j + 1) * rows)));
  return solveWeighted(
    { columns, matrix, transform, hasConstant, describeDependence: dependentColumns },
    response,
    data.weights,
  );
}

/**
 * Polynomial by weighted least squares, solved in Chebyshev polynomials of the centred x and written back in powers of x.
 *
 *     min Σ wᵢ(yᵢ − c₀ − c₁xᵢ − c₂xᵢ² − …)²
 *
 * @param x - places [unit of x]
 * @param y - readings there [unit of y]
 * @param degree - highest power, 0 or more [-]
 * @param weights - 1/variance up to a common factor, 1 each unless given
 * @returns as {@link fitLinear}, ascending powers; the condition number is that of the centred basis [unit of y over powers of the unit of x]
 * @throws {NotEnoughDataError} on fewer different places than coefficients
 * @throws {OutOfRangeError} on a number that is not finite, a negative weight, lists of unlike length, a degree that is no whole number
 *
 * Valid for degrees that the places can carry. Source: {@link fitLinear}; Abramowitz & Stegun 22.7.4
 */
export function fitPolynomial(
  x: readonly number[],
  y: readonly number[],
  degree: number,
  weights?: readonly number[],
): LinearFit {
  if (!(Number.isInteger(degree) && degree >= 0))
    throw new OutOfRangeError("degree", degree, "a whole number, 0 or greater");
  requireAllFinite("x", x);
  requireLength("number of y", y.length, x.length);
  const counted = weights ? x.filter((_, i) => weights[i] !== 0) : x;
  const different = differentPlaces(counted, degree + 1);
  if (different <= degree) throw tooFewPlaces(different, degree);
  const centring = centringOf(counted);
  const basis: Basis = {
    columns: degree + 1,
    matrix: chebyshevColumns(x, degree, centring),
    transform: powersOfChebyshev(degree, centring),
    hasConstant: true,
    describeDependence: () => tooClose(degree),
  };
  return solveWeighted(basis, y, weights);
}

/** @returns how many different places there are, counted up to as many as are needed */
function differentPlaces(x: readonly number[], needed: number): number {
  const found = new Set<number>();
  for (const place of x) if (found.add(place).size >= needed) break;
  return found.size;
}

/** Divides each column by a power of two, exactly, so that its largest element lies between 1 and 2. @returns the divisors */
function scaleColumns(matrix: Doubled, rows: number, columns: number): number[] {
  return Array.from({ length: columns }, (_, j) => {
    const column = matrix.hi.subarray(j * rows, (j + 1) * rows);
    const largest = column.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const scale = largest > 0 ? 2 ** Math.floor(Math.log2(largest)) : 1;
    for (let i = 0; i < rows; i += 1) column[i] /= scale;
    return scale;
  });
}

function isConstant(column: Float64Array): boolean {
  return column[0] !== 0 && column.every((value) => value === column[0]);
}

function tooFewPlaces(different: number, degree: number): NotEnoughDataError {
  return new NotEnoughDataError(
    `A polynomial of degree ${degree} needs readings at ${degree + 1} different places, there are ${different}.`,
    `Measure at ${degree + 1 - different} more places.`,
  );
}

function tooClose(degree: number): NotEnoughDataError {
  return new NotEnoughDataError(
    `The places lie too close together for a polynomial of degree ${degree}.`,
    "Measure further apart.",
  );
}

function dependentColumns(weakest: readonly number[]): NotEnoughDataError {
  const largest = Math.max(...weakest.map(Math.abs));
  const columns = weakest.flatMap((share, j) =>
    Math.abs(share) > NOTICEABLE_SHARE * largest ? [j + 1] : [],
  );
  return new NotEnoughDataError(
    columns.length === 1
      ? `Column ${columns[0]} of the design is 0 in every reading.`
      : `The readings can't tell columns ${columns.join(", ")} of the design apart.`,
    columns.length === 1
      ? "Measure at settings where it is not 0."
      : "Measure at settings where these change independently of each other.",
  );
}
