/** Between the paths of a group that is uncertain together. */
export const TOGETHER = " + ";

/** Value that 5, 50 and 95 % of the samples stay under; null where it is none. */
export interface Quantiles {
  readonly p5: number | null;
  readonly p50: number | null;
  readonly p95: number | null;
}

/** Quantiles of a margin: null where no suction is needed. */
export interface Spread extends Quantiles {
  /** share of samples with a margin of 1 or more, or no suction needed */
  readonly holds: number;
}

/** 5 and 95 % of a normal distribution lie this many standard deviations apart. */
const DEVIATIONS_APART = 2 * 1.6448536269514722;

/**
 * Standard deviation that quantiles speak of.
 *
 *     s = (p95 − p5)/3.29
 *
 * @param quantiles - 5 and 95 % [any unit]
 * @returns the deviation of a normal distribution with these quantiles [same unit]; 0 where one of them is none
 *
 * Valid for samples that are nearly normal. Source: quantiles of the normal distribution
 */
export function deviationOf({ p5, p95 }: Pick<Quantiles, "p5" | "p95">): number {
  return p5 === null || p95 === null ? 0 : (p95 - p5) / DEVIATIONS_APART;
}

const [P5, P50, P95] = [0.05, 0.5, 0.95];

function quantile(sorted: Float64Array, share: number): number | null {
  const place = share * (sorted.length - 1);
  const [below, above] = [sorted[Math.floor(place)], sorted[Math.ceil(place)]];
  if (!(above < Number.POSITIVE_INFINITY)) return null;
  return below + (place - Math.floor(place)) * (above - below);
}

/**
 * Quantiles of samples.
 *
 *     by straight line between the two neighbours of share·(n − 1)
 *
 * @param samples - in any order, NaN nowhere [any unit]
 * @returns 5, 50 and 95 % [same unit]; null where it is infinite
 *
 * Valid for two samples or more. Source: linear interpolation of order statistics (type 7 of Hyndman & Fan, The American Statistician 50 (1996) 361–365)
 */
export function quantilesOf(samples: Float64Array): Quantiles {
  const sorted = samples.toSorted();
  return { p5: quantile(sorted, P5), p50: quantile(sorted, P50), p95: quantile(sorted, P95) };
}

/**
 * Spread of sampled margins.
 *
 *     {@link quantilesOf};  chance of holding = share of the margins ≥ 1
 *
 * @param margins - infinite where no suction is needed [-]
 * @returns 5, 50 and 95 % and chance of holding [-]
 *
 * Valid for two samples or more. Source: definition
 */
export function spreadOf(margins: Float64Array): Spread {
  const held = margins.reduce((count, margin) => (margin >= 1 ? count + 1 : count), 0);
  return { ...quantilesOf(margins), holds: held / margins.length };
}

/**
 * Sampling error of a share that was counted.
 *
 *     √[p̃(1 − p̃)/(n + 3)],  p̃ = (k + 1)/(n + 2)
 *
 * @param share - k/n [-]
 * @param count - n samples [-]
 * @returns standard deviation of the share given the count, above 0 also where all or none are counted [-]
 *
 * Valid for independent random draws; even (Sobol) samples do better, so it is a bound there. Source: beta distribution of a share under Laplace's rule of succession
 */
export function shareError(share: number, count: number): number {
  const middle = (share * count + 1) / (count + 2);
  return Math.sqrt((middle * (1 - middle)) / (count + 3));
}
