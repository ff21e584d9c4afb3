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
const STEP = 1.2;
const STEPS = [-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5].map((k) => STEP * k);
/** First steps in search of the peak where Newton's don't lead there [-]; the variables are logarithms. */
const FIRST_STEP = 0.1;
/** The peak need only be near: the sum over places is right wherever it is centred. */
const TOLERANCE = 1e-5;
/** Newton's step, in standard deviations, below which the peak is near enough. */
const NEAR = 0.1;
const MOST_NEWTON = 6;
/** Step of the differences that slope and curvature are made of [-]; the variables are logarithms. */
const SHAPE_STEP = 1e-3;

/**
 * Integral of exp f over all of one or two variables.
 *
 *     ∫ exp f ≈ Σ exp f(x̂ + L·z)·det L·1.2ⁿ,  z on multiples of 1.2 within 6 (the first within 12 where f is not low by then),  L·Lᵀ = (−∂²f)⁻¹ at the peak x̂
 *
 * @param f - logarithm of the density, of one or two variables of size about 1; −∞ where there is none [-]
 * @param start - near the peak [-]
 * @param widest - standard deviations that stand in where f does not curve down at its peak [-]
 * @returns logarithm of the integral, the peak, the shares by place [-]
 * @throws {OutOfRangeError} where f is −∞ at the start
 *
 * Valid for densities with one peak and tails that end within twelve standard deviations of it, in the second variable within six.
 * Source: trapezoidal rule (exponentially exact for smooth peaks: Trefethen & Weideman, SIAM Review 56 (2014) 385–458)
 */
export function integrate(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  widest: readonly number[],
): Integral {
  const { mode, spread } = peakOf(f, start, widest);
  const placed = (zs: readonly (readonly number[])[]) =>
    zs.map((z) => mode.map((m, j) => m + spread[j].reduce((s, l, k) => s + l * z[k], 0)));
  const [core, beyond] = mode.length === 1 ? [LINE, LINE_BEYOND] : [DISC, DISC_BEYOND];
  const near = placed(core);
  const nearLogs = near.map(f);
  const far = atTheRim(core, nearLogs) > RIM ? placed(beyond) : [];
  const at = [...near, ...far];
  const logs = [...nearLogs, ...far.map(f)];
  const peak = Math.max(...logs);
  const densities = logs.map((log) => Math.exp(log - peak));
  const sum = densities.reduce((total, density) => total + density, 0);
  const cell = spread.reduce((product, row, j) => product * STEP * row[j], 1);
  return {
    log: peak + Math.log(sum * cell),
    mode,
    places: at.map((x, i) => ({ x, share: densities[i] / sum })),
  };
}

/**
 * The same, by the curvature at the peak alone: near enough to tell where there is anything to integrate.
 *
 *     ∫ exp f ≈ exp f(x̂)·(2π)^(n/2)·det L
 *
 * @param f - as in {@link integrate} [-]
 * @param start - near the peak [-]
 * @param widest - as in {@link integrate} [-]
 * @returns logarithm of the integral and the peak [-]
 * @throws {OutOfRangeError} where f is −∞ at the start
 *
 * Valid for densities that are nearly normal, elsewhere off by tenths. Source: Laplace's method
 */
export function roughIntegral(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  widest: readonly number[],
): Pick<Integral, "log" | "mode"> {
  const { mode, spread, value } = peakOf(f, start, widest);
  const logCell = spread.reduce((sum, row, j) => sum + Math.log(row[j]), 0);
  return { log: value + logCell + (mode.length * Math.log(2 * Math.PI)) / 2, mode };
}

/** The corners beyond six standard deviations from the peak are left out. */
const INSIDE = 6.45 * STEP;
const LINE = STEPS.map((z) => [z]);
const DISC = STEPS.flatMap((z) => STEPS.map((w) => [z, w])).filter(([z, w]) => Math.hypot(z, w) <= INSIDE);
/** Places twice as far out, for few readings: their scatter may be large, and the tails are long then. */
const FURTHER = [-10, -9, -8, -7, -6, ...STEPS.map((z) => z / STEP), 6, 7, 8, 9, 10].map((k) => STEP * k);
const isFar = (z: number) => Math.abs(z) > 5.5 * STEP;
const LINE_BEYOND = FURTHER.filter(isFar).map((z) => [z]);
const DISC_BEYOND = FURTHER.flatMap((z) => STEPS.map((w) => [z, w])).filter(
  ([z, w]) => isFar(z) || Math.hypot(z, w) > INSIDE,
);
/** Share of the whole at the rim above which the tails are followed further out [-]. */
const RIM = 1e-5;

/** @returns share of the sum that the outermost places hold [-] */
function atTheRim(places: readonly (readonly number[])[], logs: readonly number[]): number {
  const peak = Math.max(...logs);
  let [rim, sum] = [0, 0];
  for (let i = 0; i < logs.length; i += 1) {
    const density = Math.exp(logs[i] - peak);
    sum += density;
    if (Math.hypot(...places[i]) > 4.5 * STEP) rim += density;
  }
  return rim / sum;
}

interface Peak {
  readonly mode: readonly number[];
  /** lower triangle L with L·Lᵀ = H⁻¹ */
  readonly spread: readonly (readonly number[])[];
  /** f there */
  readonly value: number;
}

function peakOf(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  widest: readonly number[],
): Peak {
  return newton(f, start) ?? searched(f, start, widest);
}

/** From a start near the peak; null where the steps don't end there. */
function newton(f: (x: readonly number[]) => number, start: readonly number[]): Peak | null {
  let mode = start;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < MOST_NEWTON; i += 1) {
    const { value, slope, curvature } = shapeAt(f, mode);
    const spread = spreadOf(curvature);
    if (spread === null || !(value >= highest)) return null;
    // H⁻¹·slope = L·(Lᵀ·slope); Lᵀ·slope is the step in standard deviations.
    const scaled = mode.map((_, k) => spread.reduce((sum, row, j) => sum + row[k] * slope[j], 0));
    const here = mode;
    if (Math.hypot(...scaled) < NEAR) return { mode: here, spread, value };
    mode = here.map((x, j) => x + spread[j].reduce((sum, l, k) => sum + l * scaled[k], 0));
    highest = value;
  }
  return null;
}

interface Shape {
  readonly value: number;
  readonly slope: readonly number[];
  /** −∂²f */
  readonly curvature: readonly (readonly number[])[];
}

/** Value, slope and curvature from one set of places: 3 of them for one variable, 9 for two. */
function shapeAt(f: (x: readonly number[]) => number, x: readonly number[]): Shape {
  const value = f(x);
  const moved = (j: number, by: number) => f(x.map((each, i) => (i === j ? each + by : each)));
  const sides = x.map((_, j) => ({ up: moved(j, SHAPE_STEP), down: moved(j, -SHAPE_STEP) }));
  const slope = sides.map(({ up, down }) => (up - down) / (2 * SHAPE_STEP));
  const [first, second] = sides.map(({ up, down }) => (2 * value - up - down) / SHAPE_STEP ** 2);
  if (x.length === 1) return { value, slope, curvature: [[first]] };
  const corner = (a: number, b: number) => f([x[0] + a * SHAPE_STEP, x[1] + b * SHAPE_STEP]);
  const mixed = -(corner(1, 1) - corner(1, -1) - corner(-1, 1) + corner(-1, -1)) / (4 * SHAPE_STEP ** 2);
  return {
    value,
    slope,
    curvature: [
      [first, mixed],
      [mixed, second],
    ],
  };
}

function searched(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  widest: readonly number[],
): Peak {
  const minus = (x: readonly number[]) => -f(x);
  const options = { steps: start.map(() => FIRST_STEP), tolerance: TOLERANCE };
  const { x: mode, value } = minimise(minus, start, options);
  const diagonal = widest.map((sd, j) => widest.map((_, k) => (j === k ? sd : 0)));
  return { mode, spread: spreadOf(shapeAt(f, mode).curvature) ?? diagonal, value: -value };
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
