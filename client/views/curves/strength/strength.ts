import { type CensoredFit, fitCensored } from "../../../../shared/fit/censoredFit.ts";
import type { Bracket } from "../../../../shared/fit/censoredLikelihood.ts";
import { type MoreTrials, moreTrials } from "../../../../shared/fit/moreTrials.ts";
import { strengthInformation } from "../../../../shared/fit/strengthBands.ts";
import { answerOrNull } from "../../../../shared/numeric/errors.ts";
import type { Source } from "../chosen.ts";
import type { Contribution } from "../share.ts";

/** A trial as its fit takes it: on the fit's own scale, such as ln F or μ. */
export interface StrengthTrial extends Source {
  readonly key: string;
  readonly test: number;
  readonly aside: boolean;
  /** −∞ where nothing held */
  readonly low: number;
  /** ∞ where it was stopped before it let go */
  readonly high: number;
}

/** Trials of one strength, their fit, and how its scale is shown. */
export interface Strength {
  readonly trials: readonly StrengthTrial[];
  /** null where the trials can't settle it */
  readonly fit: CensoredFit | null;
  /** the fit's scale → what the axis shows: grams, degrees */
  readonly shown: (value: number) => number;
  /** what a trial lies off the fit by, on the axis of residuals */
  readonly off: (value: number, mean: number) => number;
  readonly words: StrengthWords;
}

export interface StrengthWords {
  /** "pull", "slide" */
  readonly one: string;
  readonly axis: string;
  readonly offAxis: string;
  /** "load", "tilt" */
  readonly step: string;
  /** "let go", "slid" */
  readonly ends: string;
  /** of the y axis: "let go, %" */
  readonly event: string;
  /** the main figure: "the median" */
  readonly figure: string;
}

const inUse = (trials: readonly StrengthTrial[]) => trials.filter((trial) => !trial.aside);

/** @returns the brackets that the fit is made from */
export function bracketsOf(trials: readonly StrengthTrial[]): Bracket[] {
  return inUse(trials)
    .filter(({ low, high }) => Number.isFinite(low) || Number.isFinite(high))
    .map(({ low, high }) => ({ low, high, count: 1 }));
}

const LEAST_TRIALS = 2;

/** @returns a strength from its trials; fewer than two show no distribution */
export function strengthOf(from: Omit<Strength, "fit">): Strength {
  const brackets = bracketsOf(from.trials);
  const fit = brackets.length < LEAST_TRIALS ? null : answerOrNull(() => fitCensored(brackets));
  return { ...from, fit };
}

/** @returns what each test brought, by index of the page's tests; the shift is that of the mean, in `of`'s units */
export function strengthContributions(
  { trials, fit }: Strength,
  relative: (mean: number, without: number) => number,
): ReadonlyMap<number, Contribution> {
  const used = inUse(trials).filter(({ low, high }) => Number.isFinite(low) || Number.isFinite(high));
  const known = fit && strengthInformation(bracketsOf(used), fit);
  const tests = [...new Set(trials.map(({ test }) => test))];
  return new Map(
    tests.map((test) => {
      const own = used.filter((trial) => trial.test === test).length;
      const aside = trials.filter((trial) => trial.test === test && trial.aside).length;
      const share = known
        ? used.reduce((sum, trial, i) => sum + (trial.test === test ? known.shares[i] : 0), 0)
        : null;
      const rest = bracketsOf(used.filter((trial) => trial.test !== test));
      const without = fit && rest.length > 0 ? answerOrNull(() => fitCensored(rest).mean) : null;
      const shift = fit && without !== null ? relative(fit.mean, without) : null;
      return [test, { used: own, aside, share, shift }];
    }),
  );
}

/** @returns how many more trials would halve the uncertainty of the mean; null where no scatter was seen */
export function nextTrials({ trials, fit }: Strength): MoreTrials | null {
  return fit && moreTrials(bracketsOf(trials), fit);
}
