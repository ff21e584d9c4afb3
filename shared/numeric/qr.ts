/** A tall matrix by columns, element (i, j) at i + j·rows, as R on and above the diagonal and Householder vectors below it. */
export interface Qr {
  readonly rows: number;
  readonly columns: number;
  readonly packed: Float64Array;
  /** factor of each reflection I − τvvᵀ, the leading 1 of v not stored */
  readonly tau: Float64Array;
}

/**
 * Householder QR of a tall matrix.
 *
 *     A = Q·R, Q = H₁H₂…Hₙ, H = I − τvvᵀ
 *
 * @param matrix - by columns, element (i, j) at i + j·rows; left as it is [any unit]
 * @param rows - number of rows, at least `columns` [-]
 * @param columns - number of columns [-]
 * @returns the packed factors [any unit]
 *
 * Valid for any rank: a dependent column leaves a diagonal element of R near 0.
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., section 5.2
 */
export function factorQr(matrix: Float64Array, rows: number, columns: number): Qr {
  const packed = Float64Array.from(matrix);
  const tau = new Float64Array(columns);
  const qr = { rows, columns, packed, tau };
  for (let k = 0; k < columns; k += 1) {
    tau[k] = makeReflection(packed, k + k * rows, (k + 1) * rows);
    for (let j = k + 1; j < columns; j += 1) reflect(qr, k, packed, j * rows);
  }
  return qr;
}

/** Turns packed[start … end) into β (at start) and the tail of v. @returns τ */
function makeReflection(packed: Float64Array, start: number, end: number): number {
  const alpha = packed[start];
  let tail = 0;
  for (let i = start + 1; i < end; i += 1) tail += packed[i] * packed[i];
  if (tail === 0) return 0;
  const length = Math.sqrt(alpha * alpha + tail);
  const beta = alpha > 0 ? -length : length;
  for (let i = start + 1; i < end; i += 1) packed[i] /= alpha - beta;
  packed[start] = beta;
  return (beta - alpha) / beta;
}

/** Applies reflection k to the vector that starts at `offset`, in place. */
function reflect(qr: Qr, k: number, vector: Float64Array, offset: number): void {
  const { packed, rows } = qr;
  const column = k * rows;
  let dot = vector[offset + k];
  for (let i = k + 1; i < rows; i += 1) dot += packed[column + i] * vector[offset + i];
  dot *= qr.tau[k];
  vector[offset + k] -= dot;
  for (let i = k + 1; i < rows; i += 1) vector[offset + i] -= dot * packed[column + i];
}

/** Replaces b by Qᵀb. */
export function applyTransposedQ(qr: Qr, b: Float64Array): void {
  for (let k = 0; k < qr.columns; k += 1) reflect(qr, k, b, 0);
}

/** Replaces b by Qb. */
export function applyQ(qr: Qr, b: Float64Array): void {
  for (let k = qr.columns - 1; k >= 0; k -= 1) reflect(qr, k, b, 0);
}

/** Replaces the first `columns` elements of b by R⁻¹b. */
export function solveUpper(qr: Qr, b: Float64Array): void {
  const { packed, rows } = qr;
  for (let j = qr.columns - 1; j >= 0; j -= 1) {
    b[j] /= packed[j + j * rows];
    for (let i = 0; i < j; i += 1) b[i] -= b[j] * packed[i + j * rows];
  }
}

/** Replaces the first `columns` elements of b by R⁻ᵀb. */
export function solveTransposedUpper(qr: Qr, b: Float64Array): void {
  const { packed, rows } = qr;
  for (let j = 0; j < qr.columns; j += 1) {
    for (let i = 0; i < j; i += 1) b[j] -= b[i] * packed[i + j * rows];
    b[j] /= packed[j + j * rows];
  }
}

/** @returns R, row by row [unit of each column] */
export function upperFactor(qr: Qr): number[][] {
  const { packed, rows, columns } = qr;
  return Array.from({ length: columns }, (_, i) =>
    Array.from({ length: columns }, (_unused, j) => (j < i ? 0 : packed[i + j * rows])),
  );
}

/** @returns R⁻¹, column by column [one over the unit of each row]; the diagonal of R must not hold a 0 */
export function inverseUpperColumns(qr: Qr): Float64Array[] {
  return Array.from({ length: qr.columns }, (_, j) => {
    const column = new Float64Array(qr.columns);
    column[j] = 1;
    solveUpper(qr, column);
    return column;
  });
}

/** @returns squared lengths of the rows of Q's first `columns` columns: the leverages [-] */
export function rowLeverages(qr: Qr): Float64Array {
  const leverages = new Float64Array(qr.rows);
  const column = new Float64Array(qr.rows);
  for (let j = 0; j < qr.columns; j += 1) {
    column.fill(0);
    column[j] = 1;
    applyQ(qr, column);
    for (let i = 0; i < qr.rows; i += 1) leverages[i] += column[i] * column[i];
  }
  return leverages;
}
