/** Sweeps of rotations; convergence is quadratic, ten are plenty for a few dozen columns. */
const MAX_SWEEPS = 60;

export interface Conditioning {
  /** largest over smallest singular value of the matrix with its columns scaled to length 1; Infinity on a column of zeros [-] */
  readonly conditionNumber: number;
  /** the combination of the scaled columns that comes nearest to 0, of length 1 [-] */
  readonly weakest: readonly number[];
}

/**
 * How nearly the columns of a matrix depend on each other, whatever their units.
 *
 *     κ = σ_max/σ_min of A·diag(1/‖aⱼ‖)
 *
 * @param matrix - row by row, at least as many rows as columns [any unit]
 * @returns the condition number and the weakest combination [-]
 *
 * Valid for a few dozen columns; small singular values come out to nearly full relative precision.
 * Source: one-sided Jacobi, Golub & Van Loan, Matrix Computations, 4th ed., section 8.6.3
 */
export function scaledConditioning(matrix: readonly (readonly number[])[]): Conditioning {
  const columns = matrix[0]?.length ?? 0;
  const u = Array.from({ length: columns }, (_, j) => unit(matrix.map((row) => row[j])));
  const v = Array.from({ length: columns }, (_, j) => u.map((_unused, i) => (i === j ? 1 : 0)));
  let sweeps = 0;
  while (sweep(u, v) && sweeps < MAX_SWEEPS) sweeps += 1;
  const sigma = u.map(length);
  const least = Math.min(...sigma);
  return {
    conditionNumber: least > 0 ? Math.max(...sigma) / least : Number.POSITIVE_INFINITY,
    weakest: v[sigma.indexOf(least)] ?? [],
  };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, x, i) => sum + x * b[i], 0);
}

function length(a: readonly number[]): number {
  return Math.hypot(...a);
}

function unit(a: readonly number[]): number[] {
  const size = length(a);
  return size > 0 ? a.map((x) => x / size) : [...a];
}

/** Makes every pair of columns orthogonal in turn. @returns whether any pair still had to be turned */
function sweep(u: number[][], v: number[][]): boolean {
  let turned = false;
  for (let p = 0; p < u.length; p += 1)
    for (let q = p + 1; q < u.length; q += 1) {
      const [alpha, beta, gamma] = [dot(u[p], u[p]), dot(u[q], u[q]), dot(u[p], u[q])];
      if (Math.abs(gamma) <= Number.EPSILON * Math.sqrt(alpha * beta)) continue;
      turned = true;
      const zeta = (beta - alpha) / (2 * gamma);
      const t = (zeta >= 0 ? 1 : -1) / (Math.abs(zeta) + Math.hypot(1, zeta));
      turn(u, p, q, t);
      turn(v, p, q, t);
    }
  return turned;
}

function turn(columns: number[][], p: number, q: number, tangent: number): void {
  const cosine = 1 / Math.hypot(1, tangent);
  const sine = cosine * tangent;
  const [a, b] = [columns[p], columns[q]];
  columns[p] = a.map((x, i) => cosine * x - sine * b[i]);
  columns[q] = a.map((x, i) => sine * x + cosine * b[i]);
}
