type Column = readonly number[];

const mean = (values: Column): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const meanProduct = (a: Column, b: Column): number => mean(a.map((value, i) => value * b[i]));

/** Shifted and scaled to mean 0 and mean square 1; null where nothing varies. */
function standardised(values: Column): number[] | null {
  const middle = mean(values);
  const shifted = values.map((value) => value - middle);
  const sd = Math.sqrt(meanProduct(shifted, shifted));
  return sd > ROUNDING * Math.abs(middle) ? shifted.map((value) => value / sd) : null;
}

/** A spread this small, relative to the mean, is rounding. */
const ROUNDING = 1e-13;

/** What x² adds to x: the part of it that neither a constant nor x explains, standardised. */
function curvatureOf(x: Column): number[] | null {
  const square = x.map((value) => value * value);
  const skew = meanProduct(square, x);
  return standardised(square.map((value, i) => value - 1 - skew * x[i]));
}

function shareOf(input: Column, y: Column): number {
  const x = standardised(input);
  if (!x) return 0;
  const curvature = curvatureOf(x);
  return meanProduct(x, y) ** 2 + (curvature ? meanProduct(curvature, y) ** 2 : 0);
}

/**
 * Each input's share of the variance of an outcome, by itself: first-order shares.
 *
 *     shareᵢ = var E[y | xᵢ]/var y, with E[y | xᵢ] a parabola in xᵢ: r(x, y)² + r(h, y)², h what x² adds to x
 *
 * @param inputs - sampled values of each input, independent of each other [any unit]
 * @param outcome - value of each sample [any unit]
 * @returns a share of each input; their sum is at most 1, the rest are interactions and higher powers [-]
 *
 * Valid for smooth outcomes; noise of about 2 over the number of samples, a sum above 1 by noise is scaled to 1; 0 where nothing varies.
 * Source: first-order indices (Sobol, Math. Modelling Comput. Exp. 1 (1993) 407–414, from memory), by projection on polynomials
 */
export function varianceShares(inputs: readonly Column[], outcome: Column): number[] {
  const y = outcome.length > 1 ? standardised(outcome) : null;
  if (!y) return inputs.map(() => 0);
  const shares = inputs.map((input) => shareOf(input, y));
  const sum = shares.reduce((total, share) => total + share, 0);
  return sum > 1 ? shares.map((share) => share / sum) : shares;
}
