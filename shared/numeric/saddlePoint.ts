/** From here on five terms of Stirling's series hold full precision. */
const SERIES_FROM = 15;
/** B₂ₖ/(2k(2k − 1)) of Stirling's series (Abramowitz & Stegun 6.1.42). */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360];
/** Share of their sum below which two numbers count as close. */
const CLOSE = 0.1;

/**
 * What Stirling's formula leaves out of a factorial.
 *
 *     δ(a) = ln Γ(a + 1) − [½ ln(2πa) + a ln a − a]
 *
 * @param a - argument, > 0 [-]
 * @returns δ, about 1/(12a) [-]
 *
 * Valid for any a > 0. Source: Loader, Fast and Accurate Computation of Binomial Probabilities (2000); Abramowitz & Stegun 6.1.42
 */
export function stirlingError(a: number): number {
  let shifted = 0;
  let x = a;
  for (; x < SERIES_FROM; x += 1) shifted += (x + 0.5) * Math.log1p(1 / x) - 1;
  const inverseSquare = 1 / x / x;
  return shifted + STIRLING.reduceRight((sum, c) => sum * inverseSquare + c, 0) / x;
}

/**
 * Deviance of a count from its mean, without cancellation where they are close.
 *
 *     d(a, m) = a ln(a/m) + m − a
 *
 * @param a - count, > 0 [-]
 * @param mean - mean m, > 0 [-]
 * @returns d ≥ 0 [-]
 *
 * Valid for any a, m > 0. Source: Loader, Fast and Accurate Computation of Binomial Probabilities (2000)
 */
export function deviance(a: number, mean: number): number {
  const difference = a - mean;
  const v = difference / (a + mean);
  if (!(Math.abs(v) < CLOSE)) return a * Math.log(a / mean) - difference;
  let sum = difference * v;
  let term = 2 * a * v;
  for (let k = 3; ; k += 2) {
    term *= v * v;
    const next = sum + term / k;
    if (next === sum) return next;
    sum = next;
  }
}
