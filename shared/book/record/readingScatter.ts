import type { Quantiles } from "../../decide/spread.ts";

/** 95 % point of the normal distribution [-]. */
const Z95 = 1.6448536269514722;

/**
 * The band of a figure made the band of one reading of it, which scatters beside.
 *
 *     ln p₉₅ = ln p₅₀ + √[(ln p₉₅/p₅₀)² + (1.645·s)²], ln p₅ likewise
 *
 * @param band - of the figure [any unit]
 * @param scatter - s, relative standard uncertainty of one reading [-]
 * @returns the reading's band [same unit]; the same where it isn't above 0
 *
 * Valid for figures and readings that are about log-normal. Source: sum of independent normal errors
 */
export function withScatter(band: Quantiles, scatter: number): Quantiles {
  const { p5, p50, p95 } = band;
  if (p5 === null || p50 === null || p95 === null || !(p5 > 0)) return band;
  const reach = (edge: number) => Math.exp(Math.hypot(Math.log(edge / p50), Z95 * scatter));
  return { p5: p50 / reach(p5), p50, p95: p50 * reach(p95) };
}
