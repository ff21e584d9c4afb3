import { OutOfRangeError } from "./errors.ts";
import { incompleteBeta } from "./incompleteBeta.ts";
import { normalQuantile } from "./normalQuantile.ts";
import { solveIncreasing } from "./solveIncreasing.ts";

/**
 * Exact interval for a proportion from a count (Clopper and Pearson).
 *
 *     P(X ≥ x | lo) = α/2,  P(X ≤ x | hi) = α/2,  α = 1 − confidence
 *
 * @param x - how many of the trials had it, a whole number from 0 to n [-]
 * @param n - number of trials, 1 or more [-]
 * @param confidence - share of such intervals that hold the true proportion, at least; above 0, below 1 [-]
 * @returns lower and upper end; exactly 0 at x = 0, exactly 1 at x = n [-]
 * @throws {OutOfRangeError} on counts that are no whole numbers, x outside 0…n, a confidence outside 0…1
 *
 * Valid for n up to about 1e9. Source: Clopper & Pearson, Biometrika 26 (1934) 404–413
 */
export function clopperPearson(x: number, n: number, confidence: number): [number, number] {
  requireCounts(x, n, confidence);
  const tail = (1 - confidence) / 2;
  const lowOdds = x === 0 ? 0 : oddsAtShare(tail, x, n - x + 1);
  const highOddsAgainst = x === n ? 0 : oddsAtShare(tail, n - x, x + 1);
  return [lowOdds / (1 + lowOdds), 1 / (1 + highOddsAgainst)];
}

/** The odds below which a small share of a beta distribution lies. */
function oddsAtShare(share: number, a: number, b: number): number {
  const below = (odds: number): number => incompleteBeta(a, b, odds / (1 + odds), 1 / (1 + odds)).lower;
  return solveIncreasing((odds) => Math.log(below(odds) / share), a / b);
}

/**
 * Score interval for a proportion from a count (Wilson).
 *
 *     (p̂ − p)² = z² p(1 − p)/n, solved for p
 *
 * @param x - how many of the trials had it, a whole number from 0 to n [-]
 * @param n - number of trials, 1 or more [-]
 * @param confidence - share of such intervals that hold the true proportion, about; above 0, below 1 [-]
 * @returns lower and upper end; exactly 0 at x = 0, exactly 1 at x = n [-]
 * @throws {OutOfRangeError} on counts that are no whole numbers, x outside 0…n, a confidence outside 0…1
 *
 * Valid for any n. Source: Wilson, J. Am. Stat. Assoc. 22 (1927) 209–212
 */
export function wilson(x: number, n: number, confidence: number): [number, number] {
  requireCounts(x, n, confidence);
  const z = -normalQuantile((1 - confidence) / 2);
  const larger = 2 * x + z * z + z * Math.sqrt(z * z + (4 * x * (n - x)) / n);
  const lo = (2 * x * x) / (n * larger);
  return [lo, x === n ? 1 : larger / (2 * (n + z * z))];
}

function requireCounts(x: number, n: number, confidence: number): void {
  if (!(Number.isInteger(n) && n >= 1)) throw new OutOfRangeError("n", n, "a whole number, 1 or greater");
  if (!(Number.isInteger(x) && x >= 0 && x <= n))
    throw new OutOfRangeError("x", x, `a whole number, 0 to ${n}`);
  if (!(confidence > 0 && confidence < 1))
    throw new OutOfRangeError("confidence", confidence, "greater than 0, less than 1");
}
