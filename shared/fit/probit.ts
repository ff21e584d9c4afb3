import { NotEnoughDataError, OutOfRangeError } from "../numeric/errors.ts";
import { logNormalCdf } from "../numeric/normal.ts";
import { fitCensored, type Interval } from "./censoredFit.ts";

/** How many of some trials at one level ended in the event. */
export interface DoseCount {
  /** load, or its logarithm [any unit] */
  readonly level: number;
  readonly trials: number;
  readonly events: number;
}

export interface ProbitFit {
  /** of probit(share) = intercept + slope·level [-] */
  readonly intercept: number;
  /** [1/unit of level] */
  readonly slope: number;
  /** level at which half end in the event [unit of level] */
  readonly mean: number;
  /** [unit of level] */
  readonly sd: number;
  /** 95 %, by profile likelihood; null where the counts set no end [unit of level] */
  readonly meanInterval: Interval | null;
  /** against the model with one share a level [-] */
  readonly deviance: number;
}

/**
 * Share of events against level by the probit model: pulls with one load each, seen only as held or let go.
 *
 *     P(event at x) = Φ(a + b·x);  strength ~ normal, mean −a/b, sd 1/b
 *
 * @param counts - level [any unit], trials and events there [-]
 * @returns intercept and slope, the strength's mean and sd [unit of level], deviance [-]
 * @throws {OutOfRangeError} naming `counts.i.events` where counts are no whole numbers, or more events than trials
 * @throws {NotEnoughDataError} without any event or without any non-event; where events don't grow likelier with the level
 *
 * Valid for independent trials. Where a level parts all events from all others sd is 0, and the slope is infinite: refused. Source: Finney, Probit Analysis (1971); {@link fitCensored}
 */
export function fitProbit(counts: readonly DoseCount[]): ProbitFit {
  const brackets = counts.flatMap(({ level, trials, events }, i) => {
    if (!(Number.isInteger(trials) && trials >= 0))
      throw new OutOfRangeError(`counts.${i}.trials`, trials, "a whole number, 0 or more");
    if (!(Number.isInteger(events) && events >= 0 && events <= trials))
      throw new OutOfRangeError(`counts.${i}.events`, events, `a whole number, 0 to ${trials}`);
    return [
      { low: Number.NEGATIVE_INFINITY, high: level, count: events },
      { low: level, high: Number.POSITIVE_INFINITY, count: trials - events },
    ].filter((bracket) => bracket.count > 0);
  });
  const { mean, sd, meanInterval, common } = fitCensored(brackets);
  if (common) throw separated(common);
  const [intercept, slope] = [-mean / sd, 1 / sd];
  return { intercept, slope, mean, sd, meanInterval, deviance: devianceOf(counts, intercept, slope) };
}

function separated([low, high]: Interval): NotEnoughDataError {
  return new NotEnoughDataError(
    `Every trial up to ${low} is without the event and every one from ${high} with it: the slope has no bound.`,
    "Add trials at levels between, where some end in the event and some do not.",
    "counts",
  );
}

function devianceOf(counts: readonly DoseCount[], intercept: number, slope: number): number {
  const part = (seen: number, trials: number, log: number) =>
    seen === 0 ? 0 : 2 * seen * (Math.log(seen / trials) - log);
  return counts.reduce((sum, { level, trials, events }) => {
    const z = intercept + slope * level;
    return sum + part(events, trials, logNormalCdf(z)) + part(trials - events, trials, logNormalCdf(-z));
  }, 0);
}
