import { normalCdf, normalDensity } from "../numeric/normal.ts";
import type { CensoredFit } from "./censoredFit.ts";
import type { Bracket } from "./censoredLikelihood.ts";
import { strengthInformation } from "./strengthBands.ts";

export interface MoreTrials {
  /** further trials like those made */
  readonly count: number;
  /** standard error of the mean with them over the one now, 0…1 [-] */
  readonly shrinks: number;
  /** width of the brackets that is reckoned with, the middle one of those made; 0 where they are readings [unit of F] */
  readonly step: number;
}

const HALF = 0.5;
/** More trials than this nobody makes in a day [-]. Judgement. */
const MOST_TRIALS = 40;
/** Loads beyond this many standard deviations don't count [-]. */
const FARTHEST = 8;
/** Places of a grid of steps that are averaged over: where the steps fall is chance [-]. */
const OFFSETS = 8;

/**
 * What one further trial tells of mean and scatter, its load raised in even steps until it lets go.
 *
 *     I = Σ over the steps of (∂p/∂θ)(∂p/∂θ)ᵀ/p, p = Φ(b) − Φ(a), averaged over where the steps fall;  step 0: diag(1, 2)/s²
 *
 * @param sd - s, above 0 [unit of F]
 * @param step - of the load [unit of F]
 * @returns information of (m, s) [1/unit of F squared]
 *
 * Valid for a normal strength. Source: Fisher information of grouped data, Kulldorff, Estimation from Grouped and Partially Grouped Samples (1961)
 */
export function informationOfTrial(sd: number, step: number): number[][] {
  const width = step / sd;
  const scaled = (matrix: readonly number[]) => {
    const [a, b, c] = matrix.map((value) => value / sd ** 2);
    return [
      [a, b],
      [b, c],
    ];
  };
  if (!(width > 0)) return scaled([1, 0, 2]);
  const sum = [0, 0, 0];
  for (let k = 0; k < OFFSETS; k++) {
    const first = -Math.ceil(FARTHEST / width) * width + ((k + 0.5) / OFFSETS) * width;
    addCell(sum, Number.NEGATIVE_INFINITY, first);
    for (let lo = first; lo < FARTHEST; lo += width) addCell(sum, lo, lo + width);
  }
  return scaled(sum.map((value) => value / OFFSETS));
}

/** One step's part, in standard deviations: mean, both, scatter. */
function addCell(sum: number[], lo: number, hi: number): void {
  const p = lo > 0 ? normalCdf(-lo) - normalCdf(-hi) : normalCdf(hi) - normalCdf(lo);
  if (!(p > Number.MIN_VALUE)) return;
  const ofMean = normalDensity(lo) - normalDensity(hi);
  const weighted = (z: number) => (Number.isFinite(z) ? z * normalDensity(z) : 0);
  const ofScatter = weighted(lo) - weighted(hi);
  sum[0] += ofMean ** 2 / p;
  sum[1] += (ofMean * ofScatter) / p;
  sum[2] += ofScatter ** 2 / p;
}

/**
 * How many more trials would halve the uncertainty of the mean, from the information of those made.
 *
 *     u²(m) = [(J + n·I)⁻¹]₁₁, J of the brackets made, I of one more with steps like theirs
 *
 * @param brackets - as the fit took them: low, high [unit of F], count [-]
 * @param fit - mean, sd [unit of F]
 * @returns the least number that halves the standard error of the mean, at most 40, and what it does [-]; null where no scatter was seen or the trials tell too little
 *
 * Valid where the scatter stays as fitted. Source: {@link strengthInformation}, {@link informationOfTrial}
 */
export function moreTrials(
  brackets: readonly Bracket[],
  fit: Pick<CensoredFit, "mean" | "sd">,
): MoreTrials | null {
  const made = strengthInformation(brackets, fit);
  const now = made && errorOf(made.information);
  if (!made || now === null) return null;
  const step = usualStep(brackets);
  const one = informationOfTrial(fit.sd, step);
  for (let count = 1; count <= MOST_TRIALS; count++) {
    const after = errorOf(made.information.map((row, i) => row.map((value, k) => value + count * one[i][k])));
    if (after === null) return null;
    const shrinks = after / now;
    if (shrinks <= HALF || count === MOST_TRIALS) return { count, shrinks, step };
  }
  return null;
}

/** Standard error of the mean; null where the information is singular. */
function errorOf([[mm, ms], [, ss]]: readonly (readonly number[])[]): number | null {
  const determinant = mm * ss - ms * ms;
  return determinant > 0 && ss > 0 ? Math.sqrt(ss / determinant) : null;
}

function usualStep(brackets: readonly Bracket[]): number {
  const widths = brackets
    .map(({ low, high }) => high - low)
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  return widths[Math.floor(widths.length / 2)] ?? 0;
}
