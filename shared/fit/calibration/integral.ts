import { peakOf } from "./peak.ts";

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
  const { core, beyond, isAtRim } = LATTICES[mode.length - 1];
  const near = placed(core);
  const nearLogs = near.map(f);
  const far = atTheRim(isAtRim, nearLogs) > RIM[mode.length - 1] ? placed(beyond) : [];
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
  const near = inDeviations(core);
  const isAtRim = near.map((zs) => Math.hypot(...zs) > RIM_BEGINS[variables - 1]);
  return { core: near, beyond: inDeviations(beyond), isAtRim };
}

/** Distance from the peak at which the rim begins, in standard deviations. */
const RIM_BEGINS = [5.4, 5.4, 4.4];
const LATTICES = [1, 2, 3].map(lattice);
/** Share of the whole at the rim above which the tails are followed further out, of three variables where it is worth ten times the places [-]. */
const RIM = [1e-5, 1e-5, 1e-3];

/** @returns share of the sum that the outermost places hold [-] */
function atTheRim(isAtRim: readonly boolean[], logs: readonly number[]): number {
  const peak = Math.max(...logs);
  let [rim, sum] = [0, 0];
  for (let i = 0; i < logs.length; i += 1) {
    const density = Math.exp(logs[i] - peak);
    sum += density;
    if (isAtRim[i]) rim += density;
  }
  return rim / sum;
}
