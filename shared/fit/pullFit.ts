import { NotEnoughDataError, OutOfRangeError, requireNonNegative } from "../numeric/errors.ts";
import type { Note } from "../physics/note.ts";
import { typedText } from "../units/shown.ts";
import { type CensoredFit, fitCensored, type Interval } from "./censoredFit.ts";
import type { Bracket } from "./censoredLikelihood.ts";

/** One pull: the largest load that held and the smallest that let go. */
export interface PullTrial {
  /** 0 where it let go at once [N] */
  readonly held: number;
  /** null where the pull was stopped before it let go [N] */
  readonly letGo: number | null;
}

export type Distribution = "normal" | "lognormal";

export interface PullFitRequest {
  readonly trials: readonly PullTrial[];
  /** "normal" unless given */
  readonly distribution?: Distribution;
}

export interface PullFit {
  /** of F [N], log-normal: of ln F */
  readonly mean: number;
  /** of F [N], log-normal: of ln F */
  readonly sd: number;
  /** [N] */
  readonly median: number;
  /** 95 %, by profile likelihood; null where the trials set no end; as mean */
  readonly meanInterval: Interval | null;
  /** as meanInterval */
  readonly sdInterval: Interval | null;
  readonly logLikelihood: number;
  readonly warnings: readonly Note[];
}

/** Below it the profile intervals are too narrow to be taken at their word. Common practice, no source. */
const FEW_TRIALS = 5;

/**
 * Strength of a hold from pull tests: each a bracket, none a number.
 *
 *     F ∈ [held, letGo], F ≥ held where it was stopped, F ≤ letGo where it let go at once; normal or log-normal F by interval-censored maximum likelihood
 *
 * @param request - trials: held and letGo [N]; distribution
 * @returns mean and sd of F [N] (log-normal: of ln F [-]), median [N], 95 % profile intervals, L [-], notes
 * @throws {OutOfRangeError} naming `trials.i` where held is larger than letGo, or a load is negative
 * @throws {NotEnoughDataError} on one trial, on pulls that all held or all let go at once, on exact readings without scatter
 *
 * Valid for independent pulls of one and the same set-up at one supply; for several see {@link fitPullTrend}.
 * Source: {@link fitCensored}; docs/method/fits/pull.md
 */
export function fitPull(request: PullFitRequest): PullFit {
  return fitTrials(request, (load, digits) => typedText(load, "load", digits));
}

/** How a load is said in a message, to so many significant digits. */
type SaidLoad = (load: number, digits: number) => string;

/** @returns as {@link fitPull}, of loads that the messages say otherwise */
export function fitTrials(request: PullFitRequest, said: SaidLoad): PullFit {
  const { distribution = "normal" } = request;
  const trials = informative(request.trials, distribution);
  requireAnswerable(trials, said);
  const fit = fitCensored(trials.map((trial) => bracketOf(trial, distribution)));
  const { mean, sd, meanInterval, sdInterval, logLikelihood } = fit;
  return {
    mean,
    sd,
    median: distribution === "normal" ? mean : Math.exp(mean),
    meanInterval,
    sdInterval,
    logLikelihood,
    warnings: [
      ...emptyNote(request.trials.length - trials.length),
      ...pullNotes(fit, trials.length, distribution, said),
    ],
  };
}

function informative(trials: readonly PullTrial[], distribution: Distribution): PullTrial[] {
  trials.forEach(({ held, letGo }, i) => {
    requireNonNegative(`trials.${i}.held`, held);
    if (letGo === null) return;
    requireNonNegative(`trials.${i}.letGo`, letGo);
    if (distribution === "lognormal" && letGo === 0)
      throw new OutOfRangeError(`trials.${i}.letGo`, letGo, "above 0 for a log-normal strength");
    if (held > letGo) throw new OutOfRangeError(`trials.${i}.held`, held, `up to letGo, ${letGo}`);
  });
  return trials.filter(({ held, letGo }) => held > 0 || letGo !== null);
}

/** Significant digits of a load in a message. */
const DIGITS = 4;

function requireAnswerable(trials: readonly PullTrial[], said: SaidLoad): void {
  const of = (loads: readonly number[], pick: (...x: number[]) => number) => said(pick(...loads), DIGITS);
  if (trials.length > 0 && trials.every(({ letGo }) => letGo === null)) {
    const most = of(
      trials.map((trial) => trial.held),
      Math.max,
    );
    throw new NotEnoughDataError(
      `All pulls held, up to ${most}: the strength has no upper bound yet.`,
      "Pull with larger loads until it lets go, in three runs or more.",
      "trials",
    );
  }
  if (trials.length > 0 && trials.every(({ held }) => held === 0)) {
    const least = of(
      trials.flatMap(({ letGo }) => letGo ?? []),
      Math.min,
    );
    throw new NotEnoughDataError(
      `Every pull let go at once, down to ${least}: the strength has no lower bound yet.`,
      "Begin with smaller loads, in three runs or more.",
      "trials",
    );
  }
  if (trials.length < 2)
    throw new NotEnoughDataError(
      "A single pull shows a bracket, but no scatter.",
      "Repeat the pull two or more times.",
      "trials",
    );
}

function bracketOf({ held, letGo }: PullTrial, distribution: Distribution): Bracket {
  const low = held > 0 ? held : Number.NEGATIVE_INFINITY;
  const high = letGo ?? Number.POSITIVE_INFINITY;
  if (distribution === "normal") return { low, high, count: 1 };
  return { low: held > 0 ? Math.log(held) : low, high: Math.log(high), count: 1 };
}

function emptyNote(count: number): Note[] {
  if (count === 0) return [];
  return [
    { code: "empty-trials", message: `${count} pulls without any load say nothing and were left out.` },
  ];
}

function pullNotes(fit: CensoredFit, trials: number, distribution: Distribution, said: SaidLoad): Note[] {
  const notes: Note[] = [];
  const note = (code: string, message: string) => notes.push({ code, message });
  if (fit.common) {
    const [low, high] = fit.common.map((x) => said(distribution === "normal" ? x : Math.exp(x), DIGITS));
    note(
      "no-scatter-seen",
      `Every bracket contains ${low} to ${high}: the scatter is below the load steps. Repeat with finer steps to see it.`,
    );
  }
  if (trials < FEW_TRIALS)
    note("few-trials", `${trials} pulls: the intervals are rough. Five or more make them trustworthy.`);
  if (fit.meanInterval === null || fit.sdInterval === null)
    note(
      "interval-open",
      "The pulls set no end to an interval. Add runs in which one load holds and a larger one lets go.",
    );
  if (distribution === "normal" && fit.mean < 2 * fit.sd)
    note("scatter-wide", "A normal strength this scattered would often be below 0. Try the log-normal.");
  return notes;
}
