import { hessian } from "../numeric/hessian.ts";
import { normalCdf } from "../numeric/normal.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import type { CensoredFit } from "./censoredFit.ts";
import { type Bracket, likelihoodOf } from "./censoredLikelihood.ts";
import { fallingRoot } from "./fallingRoot.ts";
import type { Band } from "./rotorBands.ts";

export interface StrengthAt {
  /** share of trials that let go up to this load, as fitted [-] */
  readonly share: number;
  /** where that share lies [-] */
  readonly band: Band;
}

/** Beyond this many standard deviations a share is 0 or 1 [-]. */
const FARTHEST = 8;
/** 1/s is looked for within these powers of e around the largest bound's size. */
const LEAST_LOG_BETA = -14;
const MOST_LOG_BETA = 14;

/**
 * Share of trials that let go up to a load, with its band by profile likelihood.
 *
 *     P = Φ(z), z = (x − m)/s;  band: the z at which max over s of L(m = x − z·s, s) lies ½·χ²₁ below the maximum
 *
 * @param brackets - as the fit took them: low, high [unit of F], count [-]
 * @param fit - mean, sd [unit of F], L [-] by {@link fitCensored}
 * @param load - x, on the fit's scale [unit of F]
 * @param confidence - share of the band, 0.95 unless given [-]
 * @returns the fitted share and its band [-]
 *
 * Valid for independent trials, one load at a time; with few trials it is some percent too narrow.
 * Source: Meeker & Escobar, Statistical Methods for Reliability Data (1998), section 8.3
 */
export function strengthAt(
  brackets: readonly Bracket[],
  fit: Pick<CensoredFit, "mean" | "sd" | "logLikelihood">,
  load: number,
  confidence = 0.95,
): StrengthAt {
  const drop = normalQuantile((1 + confidence) / 2) ** 2 / 2;
  const scale = Math.max(spanOf(brackets), fit.sd);
  const seen = brackets.map(({ low, high, count }) => ({
    low: (low - load) / scale,
    high: (high - load) / scale,
    count,
  }));
  const exact = seen.reduce((sum, { low, high, count }) => sum + (low === high ? count : 0), 0);
  const top = fit.logLikelihood + exact * Math.log(scale);
  const z = fit.sd > 0 ? (load - fit.mean) / fit.sd : Math.sign(load - fit.mean) * FARTHEST;
  const inside = Math.min(FARTHEST, Math.max(-FARTHEST, z));
  const above = (at: number) => profileAt(seen, at) - (top - drop);
  const end = (direction: 1 | -1) => {
    const far = fallingRoot((step) => above(inside + direction * step), 0, 1, 0, 2 * FARTHEST);
    return far === null ? direction * FARTHEST : inside + direction * far;
  };
  const share = fit.sd > 0 ? normalCdf(z) : (1 + Math.sign(z)) / 2;
  return { share, band: { low: normalCdf(end(-1)), high: normalCdf(end(1)) } };
}

function spanOf(brackets: readonly Bracket[]): number {
  const bounds = brackets.flatMap(({ low, high }) => [low, high]).filter(Number.isFinite);
  const [least, most] = [Math.min(...bounds), Math.max(...bounds)];
  return most - least || Math.abs(most) || 1;
}

/** Highest L with the load z standard deviations above the mean, over every sd; the load is the origin of the brackets. */
function profileAt(brackets: readonly Bracket[], z: number): number {
  const slope = (logBeta: number) => likelihoodOf(brackets, -z, Math.exp(logBeta)).betaSlope;
  const found = fallingRoot(slope, 0, 1, LEAST_LOG_BETA, MOST_LOG_BETA);
  const logBeta = found ?? (slope(MOST_LOG_BETA) > 0 ? MOST_LOG_BETA : LEAST_LOG_BETA);
  return likelihoodOf(brackets, -z, Math.exp(logBeta)).value;
}

/**
 * What brackets tell of mean and scatter, and how much of it each brings.
 *
 *     J = −∂²L/∂(m, s)² at the answer;  share of a bracket: its own −∂²lnP/∂m² over the sum of all
 *
 * @param brackets - as the fit took them [unit of F]
 * @param fit - mean, sd [unit of F] by {@link fitCensored}
 * @returns information of (m, s) [1/unit of F squared] and the shares [-]; null where no scatter was seen
 *
 * Valid at the maximum, where J is not negative. Source: Meeker & Escobar (1998), section 7.6 and appendix B.6
 */
export function strengthInformation(
  brackets: readonly Bracket[],
  fit: Pick<CensoredFit, "mean" | "sd">,
): { readonly information: readonly (readonly number[])[]; readonly shares: readonly number[] } | null {
  if (!(fit.sd > 0)) return null;
  const each = brackets.map((bracket) =>
    hessian(
      ([mean, sd]) => -likelihoodOf([bracket], mean / sd, 1 / sd).value,
      [fit.mean, fit.sd],
      [fit.sd, fit.sd],
    ),
  );
  const sum = (i: number, k: number) => each.reduce((total, matrix) => total + matrix[i][k], 0);
  const ofMean = each.map((matrix) => Math.max(0, matrix[0][0]));
  const total = ofMean.reduce((all, one) => all + one, 0);
  return {
    information: [
      [sum(0, 0), sum(0, 1)],
      [sum(1, 0), sum(1, 1)],
    ],
    shares: ofMean.map((one) => (total > 0 ? one / total : 0)),
  };
}
