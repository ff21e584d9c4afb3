import { minimise } from "../../numeric/minimise.ts";

/** Integral of a density over its one to three variables, and what it says of them. */
export interface Integral {
  /** ln ∫ exp f */
  readonly log: number;
  /** place of the density's peak */
  readonly mode: readonly number[];
  /** share of each place in the whole, adding up to 1 */
  readonly places: readonly { readonly x: readonly number[]; readonly share: number }[];
}

/** Distance of places along each axis, of one, two and three variables, in standard deviations at the peak: at 1.2 a normal density is exact to 2e-6, at 1.5 to 3e-4. */
const STEPS = [1.2, 1.2, 1.5];
/** First steps in search of the peak where Newton's don't lead there [-]; the variables are logarithms. */
const FIRST_STEP = 0.1;
/** The peak need only be near: the sum over places is right wherever it is centred. */
const TOLERANCE = 1e-5;
/** Newton's step, in standard deviations, below which the peak is near enough. */
const NEAR = 0.1;
const MOST_NEWTON = 10;
/** Step of the differences that slope and curvature are made of [-]; the variables are logarithms. */
const SHAPE_STEP = 1e-3;

/**
 * Integral of exp f over all of one, two or three variables.
 *
 *     ∫ exp f ≈ Σ exp f(x̂ + L·z)·det L·dⁿ,  z on multiples of d = 1.2 within 6 (of three variables of 1.5 within 5.6; the first within 18, of three within 12, where f is not low by then),  L·Lᵀ = (−∂²f)⁻¹ at the peak x̂
 *
 * @param f - logarithm of the density, of one to three variables of size about 1; −∞ where there is none [-]
 * @param start - near the peak [-]
 * @param widest - standard deviations that stand in where f does not curve down at its peak [-]
 * @returns logarithm of the integral, the peak, the shares by place [-]
 * @throws {OutOfRangeError} where f is −∞ at the start
 *
 * Valid for densities with one peak and tails that end within eighteen standard deviations of it, in the others within six.
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
  const { core, beyond } = LATTICES[mode.length - 1];
  const near = placed(core);
  const nearLogs = near.map(f);
  const far = atTheRim(core, nearLogs) > RIM[mode.length - 1] ? placed(beyond) : [];
  const at = [...near, ...far];
  const logs = [...nearLogs, ...far.map(f)];
  const peak = Math.max(...logs);
  const densities = logs.map((log) => Math.exp(log - peak));
  const sum = densities.reduce((total, density) => total + density, 0);
  const cell = spread.reduce((product, row, j) => product * STEPS[mode.length - 1] * row[j], 1);
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

/** Steps from the peak within which places lie, about 6 standard deviations, of three variables 5.6. */
const INSIDE = [6.45, 6.45, 3.75];
/** Steps along one axis alone. */
const ALONG = [5, 5, 3];
/** Steps of the first variable where few readings leave long tails: their scatter may be large then. */
const FURTHER = [15, 15, 8];

/** Every combination of places along each of the axes. */
function grid(axes: readonly (readonly number[])[]): number[][] {
  return axes.reduce<number[][]>((rows, axis) => rows.flatMap((row) => axis.map((k) => [...row, k])), [[]]);
}

const upTo = (steps: number) => Array.from({ length: 2 * steps + 1 }, (_, i) => i - steps);

function lattice(variables: number) {
  const [inside, along, further, step] = [INSIDE, ALONG, FURTHER, STEPS].map((each) => each[variables - 1]);
  const others = Array.from({ length: variables - 1 }, () => upTo(along));
  const within = (ks: readonly number[]) => Math.hypot(...ks) <= inside;
  const isFar = ([first]: readonly number[]) => Math.abs(first) > along;
  const core = grid([upTo(along), ...others]).filter(within);
  const beyond = grid([upTo(further), ...others]).filter((ks) => isFar(ks) || !within(ks));
  const inDeviations = (places: number[][]) => places.map((ks) => ks.map((k) => step * k));
  return { core: inDeviations(core), beyond: inDeviations(beyond) };
}

const LATTICES = [1, 2, 3].map(lattice);
/** Distance from the peak at which the rim begins, in standard deviations. */
const RIM_BEGINS = [5.4, 5.4, 4.4];
/** Share of the whole at the rim above which the tails are followed further out, of three variables where it is worth ten times the places [-]. */
const RIM = [1e-5, 1e-5, 1e-3];

/** @returns share of the sum that the outermost places hold [-] */
function atTheRim(places: readonly (readonly number[])[], logs: readonly number[]): number {
  const peak = Math.max(...logs);
  let [rim, sum] = [0, 0];
  for (let i = 0; i < logs.length; i += 1) {
    const density = Math.exp(logs[i] - peak);
    sum += density;
    if (Math.hypot(...places[i]) > RIM_BEGINS[places[i].length - 1]) rim += density;
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

/** From a start near the peak, a step that leads down halved; null where the steps don't end there. */
function newton(f: (x: readonly number[]) => number, start: readonly number[]): Peak | null {
  let [mode, shape] = [start, shapeAt(f, start)];
  for (let i = 0; i < MOST_NEWTON; i += 1) {
    const { value, slope, curvature } = shape;
    const spread = spreadOf(curvature);
    if (spread === null) return null;
    // H⁻¹·slope = L·(Lᵀ·slope); Lᵀ·slope is the step in standard deviations.
    const scaled = mode.map((_, k) => spread.reduce((sum, row, j) => sum + row[k] * slope[j], 0));
    if (Math.hypot(...scaled) < NEAR) return { mode, spread, value };
    const step = spread.map((row) => row.reduce((sum, l, k) => sum + l * scaled[k], 0));
    const next = uphill(f, mode, step, value);
    if (!next) return null;
    mode = next;
    shape = shapeAt(f, mode);
  }
  return null;
}

/** The step, or a half or a quarter of it, whichever first leads up; null where none does. */
function uphill(
  f: (x: readonly number[]) => number,
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
function shapeAt(f: (x: readonly number[]) => number, x: readonly number[]): Shape {
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
