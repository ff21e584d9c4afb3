import { logNormalInterval } from "../../numeric/normal.ts";

const LOG_ROOT_TWO_PI = Math.log(2 * Math.PI) / 2;
/** A bracket narrower than this share of its load is an exact reading [-]. */
const EXACT = 1e-9;

/**
 * Logarithm of a normal density.
 *
 *     −½((x − m)/s)² − ln s − ½ ln 2π
 *
 * @param x - place [any unit]
 * @param mean - m [unit of x]
 * @param sd - s [unit of x], > 0
 * @returns the logarithm [-]
 *
 * Valid for any place. Source: definition
 */
export function logNormalDensity(x: number, mean: number, sd: number): number {
  const z = (x - mean) / sd;
  return -(z * z) / 2 - Math.log(sd) - LOG_ROOT_TWO_PI;
}

/**
 * Log-likelihood of one pull, a bracket about its predicted force.
 *
 *     ln[Φ((letGo − F)/(s·F)) − Φ((held − F)/(s·F))]; exact readings by their density
 *
 * @param held - largest force that held [N]; 0: nothing held
 * @param letGo - smallest force that let go [N]; null: nothing let go
 * @param force - predicted, F [N]
 * @param scatter - relative sd of a single pull, s [-], > 0
 * @returns L [-]; −∞ where F is not above 0 and something held
 *
 * Valid for s well below 1: a normal force reaches below 0. Source: Meeker & Escobar, Statistical Methods for Reliability Data (1998), ch. 2
 */
export function pullLikelihood(held: number, letGo: number | null, force: number, scatter: number): number {
  if (!(force > 0)) return held > 0 ? Number.NEGATIVE_INFINITY : 0;
  const sd = scatter * force;
  if (letGo !== null && letGo - held <= EXACT * letGo) return logNormalDensity(held, force, sd);
  const low = held > 0 ? (held - force) / sd : Number.NEGATIVE_INFINITY;
  const high = letGo === null ? Number.POSITIVE_INFINITY : (letGo - force) / sd;
  return high > low ? logNormalInterval(low, high) : logNormalDensity(held, force, sd);
}

/** Flow readings of a leak, against their predictions at one gap. */
export interface LeakMisfit {
  readonly count: number;
  /** of ln(measured/predicted flow) [-] */
  readonly mean: number;
  /** Σ(that − mean)² [-] */
  readonly squares: number;
}

/** @returns what the flow readings [m³/s] say against their predictions [m³/s] */
export function leakMisfit(measured: readonly number[], predicted: readonly number[]): LeakMisfit {
  const logs = measured.map((flow, i) => Math.log(flow / predicted[i]));
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  return { count: logs.length, mean, squares: logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) };
}

/**
 * Log-likelihood of a leak test's flows: each with its own scatter, all with one and the same error of the meter.
 *
 *     r = ln(Q/Q_p) normal about 0 with covariance s²·I + b²·1·1ᵀ:  −(n − 1)·ln s − ½ ln(s² + n·b²) − ½[Σ(r − r̄)²/s² + n·r̄²/(s² + n·b²)] − ½n·ln 2π
 *
 * @param misfit - number of readings, mean and squares of r [-]
 * @param scatter - relative sd of a single reading, s [-], > 0
 * @param meter - relative standard uncertainty that all share, b [-]
 * @returns L [-]
 *
 * Valid for relative errors well below 1. Source: the matrix determinant lemma and the Sherman–Morrison formula on a normal density
 */
export function leakLikelihood(misfit: LeakMisfit, scatter: number, meter: number): number {
  const { count, mean, squares } = misfit;
  const shared = scatter ** 2 + count * meter ** 2;
  const sum = squares / scatter ** 2 + (count * mean ** 2) / shared;
  return -(count - 1) * Math.log(scatter) - Math.log(shared) / 2 - sum / 2 - count * LOG_ROOT_TWO_PI;
}
