type Column = ArrayLike<number>;

/** A spread this small, relative to the mean, is rounding. */
const ROUNDING = 1e-13;
/** A variance of what x² adds to x, of 1 at its most, that is rounding: x takes two values. */
const NO_CURVATURE = 1e-10;

/** Mean and standard deviation; null where nothing varies. */
function spreadOf(values: Column): { readonly mean: number; readonly sd: number } | null {
  const count = values.length;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += values[i];
  const mean = sum / count;
  let squares = 0;
  for (let i = 0; i < count; i++) squares += (values[i] - mean) ** 2;
  const sd = Math.sqrt(squares / count);
  return sd > ROUNDING * Math.abs(mean) ? { mean, sd } : null;
}

/** Shifted and scaled to mean 0 and mean square 1; null where nothing varies. */
function standardised(values: Column): Float64Array | null {
  const spread = spreadOf(values);
  if (!spread) return null;
  const { mean, sd } = spread;
  return Float64Array.from(values, (value) => (value - mean) / sd);
}

/** r(x, y)² + r(h, y)² by the moments of x and y, h = x² − 1 − m₃·x: what x² adds to a constant and x. */
function shareOf(input: Column, y: Float64Array): number {
  const spread = spreadOf(input);
  if (!spread) return 0;
  let [third, fourth, withY, squareWithY] = [0, 0, 0, 0];
  const count = y.length;
  for (let i = 0; i < count; i++) {
    const x = (input[i] - spread.mean) / spread.sd;
    const square = x * x;
    third += square * x;
    fourth += square * square;
    withY += x * y[i];
    squareWithY += square * y[i];
  }
  const [m3, m4, xy, xxy] = [third / count, fourth / count, withY / count, squareWithY / count];
  const curvature = m4 - 1 - m3 * m3;
  return xy * xy + (curvature > NO_CURVATURE * m4 ? (xxy - m3 * xy) ** 2 / curvature : 0);
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
