import { minimise } from "../../numeric/minimise.ts";

/** Logarithm of a density, of one to three variables of size about 1; −∞ where there is none [-]. */
export type LogDensity = (x: readonly number[]) => number;

/** Newton's step, in standard deviations, below which the peak is near enough: the sum over places is right wherever it is centred. */
const NEAR = 0.1;
const MOST_STEPS = 30;
/** Step of the differences that slope and curvature are made of [-]; the variables are logarithms. */
const SHAPE_STEP = 1e-3;
/** What is added to the curvature where it leads nowhere: this share of its largest number at first, each time so many times as much [-]. */
const [FIRST_DAMPING, MORE, MOST_DAMPINGS] = [1e-2, 10, 6];
/** First steps in search of the peak where Newton's don't lead there [-], and how near they lead. */
const [FIRST_STEP, TOLERANCE] = [0.1, 1e-5];

/** Peak of a density, and how wide it is there. */
export interface DensityPeak {
  readonly mode: readonly number[];
  /** lower triangle L with L·Lᵀ = H⁻¹ */
  readonly spread: readonly (readonly number[])[];
  /** f there */
  readonly value: number;
}

/**
 * Peak of a density and its curvature there.
 *
 *     Newton's steps, damped where f does not curve down or the step leads down:  (H + λI)⁻¹·∂f;  by a simplex where they don't end
 *
 * @param f - logarithm of the density [-]
 * @param start - near the peak [-]
 * @param widest - standard deviations that stand in where f does not curve down at its peak [-]
 * @returns the peak to a tenth of a standard deviation, L with L·Lᵀ = (−∂²f)⁻¹, f there [-]
 * @throws {OutOfRangeError} where f is −∞ at the start
 *
 * Valid for densities with one peak. Source: Levenberg, Quarterly of Applied Mathematics 2 (1944) 164–168
 */
export function peakOf(f: LogDensity, start: readonly number[], widest: readonly number[]): DensityPeak {
  return newton(f, start) ?? searched(f, start, widest);
}

function newton(f: LogDensity, start: readonly number[]): DensityPeak | null {
  let [mode, shape] = [start, shapeAt(f, start)];
  for (let i = 0; i < MOST_STEPS; i += 1) {
    const { value, slope, curvature } = shape;
    const spread = spreadOf(curvature);
    const scaled = spread && inDeviations(spread, slope);
    if (spread && scaled && Math.hypot(...scaled) < NEAR) return { mode, spread, value };
    const next =
      (spread && scaled && uphill(f, mode, stepOf(spread, scaled), value)) ?? dampedUphill(f, mode, shape);
    if (!next) return null;
    mode = next;
    shape = shapeAt(f, mode);
  }
  return null;
}

/** Lᵀ·slope: the step in standard deviations. */
function inDeviations(spread: readonly (readonly number[])[], slope: readonly number[]): number[] {
  return slope.map((_, k) => spread.reduce((sum, row, j) => sum + row[k] * slope[j], 0));
}

/** H⁻¹·slope = L·(Lᵀ·slope). */
function stepOf(spread: readonly (readonly number[])[], scaled: readonly number[]): number[] {
  return spread.map((row) => row.reduce((sum, l, k) => sum + l * scaled[k], 0));
}

/** Where a step with more and more added to the curvature first leads up; null where none does. */
function dampedUphill(f: LogDensity, from: readonly number[], shape: Shape): readonly number[] | null {
  const { value, slope, curvature } = shape;
  let damping = FIRST_DAMPING * Math.max(...curvature.flat().map(Math.abs));
  for (let i = 0; i < MOST_DAMPINGS; i += 1, damping *= MORE) {
    const spread = spreadOf(curvature.map((row, j) => row.map((h, k) => (j === k ? h + damping : h))));
    const next = spread && uphill(f, from, stepOf(spread, inDeviations(spread, slope)), value);
    if (next) return next;
  }
  return null;
}

/** The step, or a half or a quarter of it, whichever first leads up; null where none does. */
function uphill(
  f: LogDensity,
  from: readonly number[],
  step: readonly number[],
  value: number,
): readonly number[] | null {
  for (const share of [1, 1 / 2, 1 / 4]) {
    const to = from.map((x, j) => x + share * step[j]);
    if (f(to) > value) return to;
  }
  return null;
}

interface Shape {
  readonly value: number;
  readonly slope: readonly number[];
  /** −∂²f */
  readonly curvature: readonly (readonly number[])[];
}

/** Value, slope and curvature from one set of places: 3 of them for one variable, 9 for two, 19 for three. */
function shapeAt(f: LogDensity, x: readonly number[]): Shape {
  const value = f(x);
  const moved = (by: readonly number[]) => f(x.map((each, i) => each + by[i] * SHAPE_STEP));
  const along = (j: number, sign: number) => x.map((_, i) => (i === j ? sign : 0));
  const both = (j: number, a: number, k: number, b: number) =>
    moved(x.map((_, i) => (i === j ? a : i === k ? b : 0)));
  const sides = x.map((_, j) => ({ up: moved(along(j, 1)), down: moved(along(j, -1)) }));
  const slope = sides.map(({ up, down }) => (up - down) / (2 * SHAPE_STEP));
  const curvature = sides.map(({ up, down }, j) => {
    const row = x.map(() => 0);
    row[j] = (2 * value - up - down) / SHAPE_STEP ** 2;
    return row;
  });
  for (let j = 0; j < x.length; j += 1)
    for (let k = 0; k < j; k += 1) {
      const crossed = both(j, 1, k, 1) - both(j, 1, k, -1) - both(j, -1, k, 1) + both(j, -1, k, -1);
      curvature[j][k] = curvature[k][j] = -crossed / (4 * SHAPE_STEP ** 2);
    }
  return { value, slope, curvature };
}

function searched(f: LogDensity, start: readonly number[], widest: readonly number[]): DensityPeak {
  const minus = (x: readonly number[]) => -f(x);
  const options = { steps: start.map(() => FIRST_STEP), tolerance: TOLERANCE };
  const { x: mode, value } = minimise(minus, start, options);
  const diagonal = widest.map((sd, j) => widest.map((_, k) => (j === k ? sd : 0)));
  return { mode, spread: spreadOf(shapeAt(f, mode).curvature) ?? diagonal, value: -value };
}

/** Lower triangle L with L·Lᵀ = H; null where H is not positive definite. */
function triangle(h: readonly (readonly number[])[]): number[][] | null {
  const l = h.map((row) => row.map(() => 0));
  for (let i = 0; i < h.length; i += 1)
    for (let j = 0; j <= i; j += 1) {
      let left = h[i][j];
      for (let k = 0; k < j; k += 1) left -= l[i][k] * l[j][k];
      if (i !== j) l[i][j] = left / l[j][j];
      else if (left > 0) l[i][i] = Math.sqrt(left);
      else return null;
    }
  return l;
}

/** Lower triangle L with L·Lᵀ = H⁻¹: of H with its variables in reverse, turned round. Null where f does not curve down in every direction. */
function spreadOf(curvature: readonly (readonly number[])[]): number[][] | null {
  const n = curvature.length;
  const l = triangle(curvature.map((row) => row.toReversed()).toReversed());
  if (!l) return null;
  const inverse = l.map((row) => row.map(() => 0));
  for (let j = 0; j < n; j += 1)
    for (let i = j; i < n; i += 1) {
      let left = i === j ? 1 : 0;
      for (let k = j; k < i; k += 1) left -= l[i][k] * inverse[k][j];
      inverse[i][j] = left / l[i][i];
    }
  return inverse.map((_, i) => inverse.map((__, j) => inverse[n - 1 - j][n - 1 - i]));
}
