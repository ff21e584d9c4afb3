import { normalQuantile } from "../../numeric/normalQuantile.ts";
import { scrambledSobol } from "../../numeric/sobol.ts";
import { MAX_DIMENSIONS } from "../../numeric/sobolDirections.ts";
import { type Dimension, stackOf } from "./stack.ts";

/** Chances that a stack closes, by how its errors are spread [-]. */
export interface Chances {
  /** normal, a tolerance three standard deviations: exact */
  readonly normal: number;
  /** evenly over the whole tolerance, as where parts were sorted or worn tools were used: sampled */
  readonly uniform: number;
}

/** Points of the sample, most even at powers of 2. */
const SAMPLES = 8192;
const SEED = 1;
/** Variance of an even spread over ± 1 [-]. */
const EVEN_VARIANCE = 1 / 3;

/** Half ranges of the pieces, one by one, largest first [m]. */
const halves = (dimensions: readonly Dimension[]): number[] =>
  dimensions
    .flatMap(({ tolerance, quantity = 1 }) => new Array<number>(quantity).fill(tolerance))
    .filter((half) => half > 0)
    .sort((a, b) => b - a);

/** Share of samples whose clearance is 0 or more; pieces beyond what the sample can tell apart are one normal error. */
function sampledShare(clearance: number, pieces: readonly number[]): number {
  const single = pieces.length <= MAX_DIMENSIONS ? pieces : pieces.slice(0, MAX_DIMENSIONS - 1);
  const rest = pieces.slice(single.length);
  const spread = Math.sqrt(EVEN_VARIANCE * rest.reduce((sum, half) => sum + half ** 2, 0));
  const width = single.length + (rest.length > 0 ? 1 : 0);
  const points = scrambledSobol(SAMPLES, width, SEED);
  let closing = 0;
  for (let i = 0; i < SAMPLES; i++) {
    let left = clearance;
    for (let j = 0; j < single.length; j++) left += single[j] * (2 * points[i * width + j] - 1);
    if (rest.length > 0) left += spread * normalQuantile(points[i * width + width - 1]);
    if (left >= 0) closing += 1;
  }
  return closing / SAMPLES;
}

/**
 * The chance that a stack closes, with normal errors and with errors spread evenly over their tolerance.
 *
 *     P(Σ s·q·L + e ≥ 0);  e normal with Σ q·(t/3)², or the sum of even spreads over ± t
 *
 * @param dimensions - nominal and tolerance [m], whether it opens or fills the clearance, pieces [-]
 * @returns both chances [-]; of the even spread from 8192 scrambled Sobol points, the same ones each time
 * @throws {OutOfRangeError} as {@link stackOf}
 *
 * Valid for independent errors. More than 64 pieces: the smallest together as one normal error.
 * Source: docs/method/fit-up.md, Chance
 */
export function chancesOf(dimensions: readonly Dimension[]): Chances {
  const { clearance, worstCase, chance } = stackOf(dimensions);
  if (worstCase[0] >= 0) return { normal: chance, uniform: 1 };
  if (worstCase[1] < 0) return { normal: chance, uniform: 0 };
  return { normal: chance, uniform: sampledShare(clearance, halves(dimensions)) };
}
