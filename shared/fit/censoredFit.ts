import { NotEnoughDataError } from "../numeric/errors.ts";
import { normalQuantile } from "../numeric/normalQuantile.ts";
import { type Bracket, bestAlpha, likelihoodOf } from "./censoredLikelihood.ts";
import { fallingRoot } from "./fallingRoot.ts";

export type Interval = readonly [number, number];

export interface CensoredFit {
  /** [unit of F] */
  readonly mean: number;
  /** 0 where all brackets share a value [unit of F] */
  readonly sd: number;
  readonly logLikelihood: number;
  /** 95 %, by profile likelihood; null where the trials set no end [unit of F] */
  readonly meanInterval: Interval | null;
  /** as meanInterval */
  readonly sdInterval: Interval | null;
  /** what all brackets share; null where they share nothing and so show a scatter [unit of F] */
  readonly common: Interval | null;
}

/** A standard deviation below this share of the span of the bounds is none [-]. */
const LEAST_SD = 1e-6;
/** A standard deviation above this many spans is beyond any bound [-]. */
const LARGEST_SD = 1e3;
/** Means are looked for this many spans around [-]. */
const FARTHEST_MEAN = 1e3;
/** Brackets narrower than this share of the span count as exact readings [-]. */
const EXACT = 1e-9;
const CONFIDENCE = 0.95;
/** Fall of L at the ends of a profile interval: half the 95 % point of χ² with one degree of freedom, 1.92. */
const DROP = normalQuantile((1 + CONFIDENCE) / 2) ** 2 / 2;

/**
 * Normal strength from brackets by maximum likelihood, with profile-likelihood intervals.
 *
 *     max Σ count·ln[Φ((high−m)/s) − Φ((low−m)/s)];  95 %: where the profile lies 1.92 below the maximum
 *
 * @param brackets - low (−∞ allowed), high (∞ allowed) [unit of F], count [-]
 * @returns mean, sd, their intervals [unit of F], L [-]. Where all brackets share a value, L is highest at sd 0: mean is then the middle of what they share, `common` says so
 * @throws {NotEnoughDataError} without a finite low and a finite high; where exact readings show no scatter at all; where larger loads hold better than smaller ones
 *
 * Valid for independent trials; with few of them the intervals are too narrow by some percent of coverage.
 * Source: Meeker & Escobar, Statistical Methods for Reliability Data (1998), ch. 7–8; Burridge (1981)
 */
export function fitCensored(brackets: readonly Bracket[]): CensoredFit {
  const { scaled, scale, common } = prepare(brackets);
  return sharesAValue(common, scale) ? withoutScatter(scaled, scale, common) : withScatter(scaled, scale);
}

/**
 * The maximum of {@link fitCensored}'s likelihood alone, without its intervals.
 *
 *     max L(m, s)
 *
 * @param brackets - as there [unit of F]
 * @returns L [-]
 * @throws {NotEnoughDataError} as there
 *
 * Valid and source: as {@link fitCensored}
 */
export function bestLikelihood(brackets: readonly Bracket[]): number {
  const { scaled, scale, common } = prepare(brackets);
  if (!sharesAValue(common, scale)) {
    const { top } = maximum(scaled);
    return top - exactCount(scaled) * Math.log(scale.span);
  }
  refuseExact(scaled);
  return touchingLikelihood(scaled, (common[0] - scale.origin) / scale.span);
}

interface Prepared {
  readonly scaled: Bracket[];
  readonly scale: Scale;
  readonly common: Interval;
}

function prepare(brackets: readonly Bracket[]): Prepared {
  const lows = brackets.map((b) => b.low).filter(Number.isFinite);
  const highs = brackets.map((b) => b.high).filter(Number.isFinite);
  if (lows.length === 0) throw new NotEnoughDataError("Nothing held.", "Begin with smaller loads.", "trials");
  if (highs.length === 0)
    throw new NotEnoughDataError("Nothing let go.", "Go on to loads at which it lets go.", "trials");
  const bounds = [...lows, ...highs];
  const [least, most] = [Math.min(...bounds), Math.max(...bounds)];
  const scale: Scale = { origin: (least + most) / 2, span: most - least || Math.abs(most) || 1 };
  const common: Interval = [Math.max(...lows), Math.min(...highs)];
  return { scaled: scaleBrackets(brackets, scale), scale, common };
}

const sharesAValue = (common: Interval, { span }: Scale) => common[0] <= common[1] + LEAST_SD * span;

interface Scale {
  readonly origin: number;
  readonly span: number;
}

const out = ({ origin, span }: Scale, x: number) => origin + span * x;
const outInterval = (scale: Scale, ends: Interval | null): Interval | null =>
  ends && [out(scale, ends[0]), out(scale, ends[1])];

/** Like brackets are counted together; the spread of all bounds becomes 1. */
function scaleBrackets(brackets: readonly Bracket[], { origin, span }: Scale): Bracket[] {
  const counted = new Map<string, Bracket>();
  for (const { low, high, count } of brackets) {
    if (!(count > 0)) continue;
    const key = `${low} ${high}`;
    counted.set(key, { low, high, count: count + (counted.get(key)?.count ?? 0) });
  }
  return [...counted.values()].map(({ low, high, count }) => {
    const top = (high - origin) / span;
    const bottom = (low - origin) / span;
    return { low: top - bottom < EXACT ? top : bottom, high: top, count };
  });
}

/** Where L is highest, in the scaled unit. */
function maximum(brackets: readonly Bracket[]): { logBeta: number; mean: number; top: number } {
  let alpha = 0;
  const slope = (logBeta: number) => {
    alpha = bestAlpha(brackets, Math.exp(logBeta), alpha);
    return likelihoodOf(brackets, alpha, Math.exp(logBeta)).betaSlope;
  };
  const logBeta = fallingRoot(slope, 1, 1, -Math.log(LARGEST_SD), -Math.log(LEAST_SD));
  if (logBeta === null)
    throw new NotEnoughDataError(
      "Larger loads held as well as smaller ones let go: no strength can be told from that.",
      "Repeat the pulls at several loads between those that always hold and those that never do.",
      "trials",
    );
  const beta = Math.exp(logBeta);
  const mean = bestAlpha(brackets, beta, alpha) / beta;
  return { logBeta, mean, top: likelihoodOf(brackets, mean * beta, beta).value };
}

function withScatter(brackets: readonly Bracket[], scale: Scale): CensoredFit {
  const { logBeta, mean, top } = maximum(brackets);
  const beta = Math.exp(logBeta);
  const ends: Interval = [mean, mean];
  return {
    mean: out(scale, mean),
    sd: scale.span / beta,
    logLikelihood: top - exactCount(brackets) * Math.log(scale.span),
    meanInterval: outInterval(scale, meanEnds(brackets, ends, 1 / beta, top)),
    sdInterval: scaledInterval(scale, sdEnds(brackets, logBeta, top)),
    common: null,
  };
}

function refuseExact(brackets: readonly Bracket[]): void {
  if (exactCount(brackets) > 0)
    throw new NotEnoughDataError(
      "The readings show no scatter at all: exact ones agree with every other.",
      "Give what held and what let go as two loads, or repeat with finer steps.",
      "trials",
    );
}

function withoutScatter(brackets: readonly Bracket[], scale: Scale, common: Interval): CensoredFit {
  refuseExact(brackets);
  const logBeta = -Math.log(LEAST_SD);
  const top = touchingLikelihood(brackets, (common[0] - scale.origin) / scale.span);
  const inner = common.map((x) => (x - scale.origin) / scale.span);
  const ends: Interval = [Math.min(...inner), Math.max(...inner)];
  const largest = largestSd(brackets, logBeta, top);
  return {
    mean: (common[0] + common[1]) / 2,
    sd: 0,
    logLikelihood: top,
    meanInterval: outInterval(scale, meanEnds(brackets, ends, LEAST_SD, top)),
    sdInterval: largest === null ? null : [0, scale.span * largest],
    common: [common[0], Math.max(common[0], common[1])],
  };
}

/** Highest L as sd → 0: 0, unless brackets only touch; then their ends share the odds, a ln a/(a+b) + b ln b/(a+b). */
function touchingLikelihood(brackets: readonly Bracket[], at: number): number {
  const near = (x: number) => Math.abs(x - at) <= LEAST_SD;
  const total = (kind: (b: Bracket) => boolean) =>
    brackets.reduce((sum, b) => sum + (kind(b) ? b.count : 0), 0);
  const below = total((b) => near(b.high));
  const above = total((b) => near(b.low));
  if (below === 0 || above === 0) return 0;
  const all = below + above;
  return below * Math.log(below / all) + above * Math.log(above / all);
}

function exactCount(brackets: readonly Bracket[]): number {
  return brackets.reduce((sum, b) => sum + (b.low === b.high ? b.count : 0), 0);
}

/** Highest L at a given mean, over every sd. */
function profileAtMean(brackets: readonly Bracket[], mean: number): number {
  const slope = (logBeta: number) => {
    const beta = Math.exp(logBeta);
    const { alphaSlope, betaSlope } = likelihoodOf(brackets, beta * mean, beta);
    return mean * alphaSlope + betaSlope;
  };
  const [least, most] = [-Math.log(LARGEST_SD * FARTHEST_MEAN), -Math.log(LEAST_SD)];
  const found = fallingRoot(slope, 1, 1, least, most);
  const beta = Math.exp(found ?? (slope(most) > 0 ? most : least));
  return likelihoodOf(brackets, beta * mean, beta).value;
}

function meanEnds(brackets: readonly Bracket[], inner: Interval, step: number, top: number): Interval | null {
  const end = (from: number, direction: 1 | -1) => {
    const above = (distance: number) =>
      profileAtMean(brackets, from + direction * (LEAST_SD + distance)) - (top - DROP);
    if (!(above(0) > 0)) return 0;
    return fallingRoot(above, 0, step, 0, FARTHEST_MEAN);
  };
  const down = end(inner[0], -1);
  const up = end(inner[1], 1);
  return down === null || up === null ? null : [inner[0] - down, inner[1] + up];
}

function sdProfile(brackets: readonly Bracket[], top: number): (logBeta: number) => number {
  let alpha = 0;
  return (logBeta) => {
    alpha = bestAlpha(brackets, Math.exp(logBeta), alpha);
    return likelihoodOf(brackets, alpha, Math.exp(logBeta)).value - (top - DROP);
  };
}

function sdEnds(brackets: readonly Bracket[], logBeta: number, top: number): Interval | null {
  const least = fallingRoot(sdProfile(brackets, top), logBeta, 1, logBeta, -Math.log(LEAST_SD));
  const largest = largestSd(brackets, logBeta, top);
  return largest === null ? null : [least === null ? 0 : Math.exp(-least), largest];
}

/** Where the profile over sd has fallen far enough; null where it never does. */
function largestSd(brackets: readonly Bracket[], logBeta: number, top: number): number | null {
  const profile = sdProfile(brackets, top);
  const found = fallingRoot((logSd) => profile(-logSd), -logBeta, 1, -logBeta, Math.log(LARGEST_SD));
  return found === null ? null : Math.exp(found);
}

function scaledInterval({ span }: Scale, ends: Interval | null): Interval | null {
  return ends && [span * ends[0], span * ends[1]];
}
