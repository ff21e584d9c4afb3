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

/**
 * Log-likelihood of a leak test's flows.
 *
 *     Σ ln φ-density of Q about Q_predicted with sd s·Q_predicted = −Σ ln Q_p − n·ln(s√2π) − R/(2s²),  R = Σ(Q/Q_p − 1)²
 *
 * @param ratios - measured over predicted flow [-], of each reading
 * @param logFlows - Σ ln Q_predicted [ln m³/s]
 * @param scatter - relative sd of a single reading, s [-], > 0
 * @returns L [-]
 *
 * Valid for independent readings. Source: definition
 */
export function leakLikelihood(ratios: readonly number[], logFlows: number, scatter: number): number {
  const squares = ratios.reduce((sum, ratio) => sum + (ratio - 1) ** 2, 0);
  return -logFlows - ratios.length * (Math.log(scatter) + LOG_ROOT_TWO_PI) - squares / (2 * scatter ** 2);
}
