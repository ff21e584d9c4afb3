import { logNormalInterval } from "../numeric/normal.ts";
import { fallingRoot } from "./fallingRoot.ts";

/** What one kind of trial says of a strength F: low ≤ F ≤ high, seen `count` times. */
export interface Bracket {
  /** −∞ where nothing held [unit of F] */
  readonly low: number;
  /** ∞ where nothing let go; equal to low for an exact reading [unit of F] */
  readonly high: number;
  readonly count: number;
}

const LOG_ROOT_TWO_PI = Math.log(2 * Math.PI) / 2;

/** Sum of the log-likelihood and its two slopes, in α = mean/sd and β = 1/sd. */
export interface Likelihood {
  readonly value: number;
  readonly alphaSlope: number;
  readonly betaSlope: number;
}

/**
 * Log-likelihood of a normal strength given brackets, in the form in which it is concave.
 *
 *     L = Σ count·ln[Φ(β·high − α) − Φ(β·low − α)],  exact readings: ln β + ln φ(βx − α);  α = mean/sd, β = 1/sd
 *
 * @param brackets - low, high [unit of F], count [-]
 * @param alpha - mean over standard deviation [-]
 * @param beta - one over standard deviation [1/unit of F], > 0
 * @returns L and its slopes along α and β [-]
 *
 * Valid for |β·bound − α| up to about 1e6. Source: Burridge, J. R. Statist. Soc. B 43 (1981) 41–45 (concavity)
 */
export function likelihoodOf(brackets: readonly Bracket[], alpha: number, beta: number): Likelihood {
  let value = 0;
  let alphaSlope = 0;
  let betaSlope = 0;
  for (const { low, high, count } of brackets) {
    const lo = beta * low - alpha;
    const hi = beta * high - alpha;
    if (low === high) {
      value += count * (Math.log(beta) - (lo * lo) / 2 - LOG_ROOT_TWO_PI);
      alphaSlope += count * lo;
      betaSlope += count * (1 / beta - lo * low);
      continue;
    }
    const log = logNormalInterval(lo, hi);
    value += count * log;
    if (Number.isFinite(high)) {
      const pull = count * Math.exp(-(hi * hi) / 2 - LOG_ROOT_TWO_PI - log);
      alphaSlope -= pull;
      betaSlope += pull * high;
    }
    if (Number.isFinite(low)) {
      const pull = count * Math.exp(-(lo * lo) / 2 - LOG_ROOT_TWO_PI - log);
      alphaSlope += pull;
      betaSlope -= pull * low;
    }
  }
  return { value, alphaSlope, betaSlope };
}

/**
 * The mean that suits a given standard deviation best.
 *
 *     α̂(β): ∂L/∂α = 0
 *
 * @param brackets - low, high [unit of F], count [-]; at least one finite low and one finite high
 * @param beta - one over standard deviation [1/unit of F], > 0
 * @param start - α to begin at [-]
 * @returns α [-]
 * @throws {NoConvergenceError} never seen: where the slope does not turn
 *
 * Valid since L is concave. Source: {@link likelihoodOf}
 */
export function bestAlpha(brackets: readonly Bracket[], beta: number, start: number): number {
  return (
    fallingRoot(
      (alpha) => likelihoodOf(brackets, alpha, beta).alphaSlope,
      start,
      1,
      Number.NEGATIVE_INFINITY,
      Number.POSITIVE_INFINITY,
    ) ?? start
  );
}
