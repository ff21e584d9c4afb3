import { hessian } from "../../numeric/hessian.ts";
import { minimise } from "../../numeric/minimise.ts";

/** Integral of a density over its one or two variables, and what it says of them. */
export interface Integral {
  /** ln ∫ exp f */
  readonly log: number;
  /** place of the density's peak */
  readonly mode: readonly number[];
  /** share of each place in the whole, adding up to 1 */
  readonly places: readonly { readonly x: readonly number[]; readonly share: number }[];
}

/** Places along each axis, in standard deviations at the peak: at a step of 1.2 a normal density is exact to 2e-6. */
const STEPS = [-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5].map((k) => 1.2 * k);
/** First steps in search of the peak where Newton's don't lead there [-]; the variables are logarithms. */
const FIRST_STEP = 0.1;
/** The peak need only be near: the sum over places is right wherever it is centred. */
const TOLERANCE = 1e-5;
/** Newton's step, in standard deviations, below which the peak is near enough. */
const NEAR = 0.1;
const MOST_NEWTON = 6;
const SLOPE_STEP = 1e-4;

/**
 * Integral of exp f over all of one or two variables.
 *
 *     ∫ exp f ≈ Σ exp f(x̂ + L·z)·det L,  z on multiples of 1.2 to ±6,  L·Lᵀ = (−∂²f)⁻¹ at the peak x̂
 *
 * @param f - logarithm of the density, of one or two variables of size about 1; −∞ where there is none [-]
 * @param start - near the peak [-]
 * @param widest - standard deviations that stand in where f does not curve down at its peak [-]
 * @returns logarithm of the integral, the peak, the shares by place [-]
 * @throws {OutOfRangeError} where f is −∞ at the start
 *
 * Valid for densities with one peak and tails that end within six standard deviations of it.
 * Source: trapezoidal rule (exponentially exact for smooth peaks: Trefethen & Weideman, SIAM Review 56 (2014) 385–458)
 */
export function integrate(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  widest: readonly number[],
): Integral {
  const minus = (x: readonly number[]) => -f(x);
  const { mode, spread } = newton(minus, start) ?? searched(minus, start, widest);
  const at = grid(mode.length).map((z) =>
    mode.map((m, j) => m + spread[j].reduce((s, l, k) => s + l * z[k], 0)),
  );
  const logs = at.map(f);
  const peak = Math.max(...logs);
  const densities = logs.map((log) => Math.exp(log - peak));
  const sum = densities.reduce((total, density) => total + density, 0);
  const cell = spread.reduce((product, row, j) => product * row[j], 1);
  return {
    log: peak + Math.log(sum * cell),
    mode,
    places: at.map((x, i) => ({ x, share: densities[i] / sum })),
  };
}

function grid(dimensions: number): number[][] {
  return dimensions === 1 ? STEPS.map((z) => [z]) : STEPS.flatMap((z) => STEPS.map((w) => [z, w]));
}

interface Peak {
  readonly mode: readonly number[];
  /** lower triangle L with L·Lᵀ = H⁻¹ */
  readonly spread: readonly (readonly number[])[];
}

const unitSizes = (x: readonly number[]) => x.map(() => 1);

/** From a start near the peak; null where the steps don't end there. */
function newton(minus: (x: readonly number[]) => number, start: readonly number[]): Peak | null {
  let [mode, value] = [start, minus(start)];
  for (let i = 0; i < MOST_NEWTON; i += 1) {
    const spread = spreadOf(hessian(minus, mode, unitSizes(mode)));
    if (spread === null) return null;
    const slope = mode.map((_, j) => slopeOf(minus, mode, j));
    // H⁻¹·slope = L·(Lᵀ·slope); Lᵀ·slope is the step in standard deviations.
    const scaled = mode.map((_, k) => spread.reduce((sum, row, j) => sum + row[k] * slope[j], 0));
    const next = mode.map((x, j) => x - spread[j].reduce((sum, l, k) => sum + l * scaled[k], 0));
    const lower = minus(next);
    if (!(lower <= value)) return null;
    [mode, value] = [next, lower];
    if (Math.hypot(...scaled) < NEAR) return { mode, spread };
  }
  return null;
}

function slopeOf(f: (x: readonly number[]) => number, x: readonly number[], j: number): number {
  const at = (step: number) => f(x.map((value, i) => (i === j ? value + step : value)));
  return (at(SLOPE_STEP) - at(-SLOPE_STEP)) / (2 * SLOPE_STEP);
}

function searched(
  minus: (x: readonly number[]) => number,
  start: readonly number[],
  widest: readonly number[],
): Peak {
  const { x: mode } = minimise(minus, start, { steps: start.map(() => FIRST_STEP), tolerance: TOLERANCE });
  const diagonal = widest.map((sd, j) => widest.map((_, k) => (j === k ? sd : 0)));
  return { mode, spread: spreadOf(hessian(minus, mode, unitSizes(mode))) ?? diagonal };
}

/** Null where f does not curve down in every direction. */
function spreadOf(curvature: readonly (readonly number[])[]): number[][] | null {
  if (!(curvature[0][0] > 0)) return null;
  if (curvature.length === 1) return [[1 / Math.sqrt(curvature[0][0])]];
  const [[a, b], [, c]] = curvature;
  const determinant = a * c - b * b;
  if (!(determinant > 0)) return null;
  const first = Math.sqrt(c / determinant);
  return [
    [first, 0],
    [-b / determinant / first, 1 / Math.sqrt(c)],
  ];
}
