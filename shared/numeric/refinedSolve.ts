import { type Doubled, doubledZeros, PreciseSum, store } from "./doubleDouble.ts";
import { applyQ, applyTransposedQ, type Qr, solveTransposedUpper, solveUpper } from "./qr.ts";

/** Steps of refinement; each gains about 16 − log₁₀κ digits, so three do for all but nearly dependent columns. */
const MAX_STEPS = 12;

/** A least-squares problem, element (i, j) of its matrix at i + j·rows. */
export interface Problem {
  readonly rows: number;
  readonly columns: number;
  readonly matrix: Doubled;
  readonly response: Doubled;
}

/**
 * Least-squares solution in twice the working precision, from a factorisation in single.
 *
 *     [I A; Aᵀ 0]·[r; x] = [b; 0], the defects f = b − r − Ax and g = −Aᵀr taken in twice the precision
 *
 * @param problem - matrix A and response b [any unit]
 * @param qr - factors of A [any unit]
 * @returns x, its correct digits limited by the data's own once κ is below about 1e14 [unit of b over unit of A]
 *
 * Valid for full column rank. Source: Björck, BIT 7 (1967) 257–278 and 8 (1968) 8–30
 */
export function solveRefined(problem: Problem, qr: Qr): Doubled {
  const { rows, columns } = problem;
  const x = doubledZeros(columns);
  const residual = new Float64Array(rows);
  const sum = new PreciseSum();
  let before = 1;
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const f = step === 0 ? Float64Array.from(problem.response.hi) : defect(problem, x, residual);
    const g = step === 0 ? new Float64Array(columns) : orthogonality(problem, residual);
    const change = correction(qr, f, g);
    const size = step === 0 ? 1 : relativeSize(change, x.hi);
    if (step > 1 && !(size < before / 2)) break;
    for (let j = 0; j < columns; j += 1) store(x, j, sum.start(x.hi[j], x.lo[j]).add(change[j]));
    // each step shrinks the error by as much as the one before it did
    if (step > 0 && size * (size / before) < Number.EPSILON ** 2) break;
    for (let i = 0; i < rows; i += 1) residual[i] += f[i];
    before = size;
  }
  return x;
}

/** f = b − r − Ax */
function defect(problem: Problem, x: Doubled, residual: Float64Array): Float64Array {
  const { rows, matrix, response } = problem;
  const f = new Float64Array(rows);
  const negative = { hi: x.hi.map((v) => -v), lo: x.lo.map((v) => -v) };
  const sum = new PreciseSum();
  for (let i = 0; i < rows; i += 1) {
    sum.start(response.hi[i], response.lo[i]).add(-residual[i]);
    f[i] = sum.addDot(matrix, i, rows, negative).hi;
  }
  return f;
}

/** g = −Aᵀr */
function orthogonality(problem: Problem, residual: Float64Array): Float64Array {
  const { rows, columns, matrix } = problem;
  const g = new Float64Array(columns);
  const negative = { hi: residual.map((v) => -v), lo: new Float64Array(rows) };
  const sum = new PreciseSum();
  for (let j = 0; j < columns; j += 1) g[j] = sum.start().addDot(matrix, j * rows, 1, negative).hi;
  return g;
}

/** Solves the augmented system for the defects: f becomes the change of r. @returns the change of x */
function correction(qr: Qr, f: Float64Array, g: Float64Array): Float64Array {
  solveTransposedUpper(qr, g);
  applyTransposedQ(qr, f);
  const change = f.slice(0, qr.columns).map((value, j) => value - g[j]);
  f.set(g);
  applyQ(qr, f);
  solveUpper(qr, change);
  return change;
}

function relativeSize(change: Float64Array, x: Float64Array): number {
  const largest = x.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const step = change.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return step === 0 ? 0 : step / largest;
}
