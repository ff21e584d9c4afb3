import type { Calibrated } from "../../../../shared/fit/calibration.ts";
import { decimalsFor, formatFixed } from "../../../../shared/units/format.ts";
import { counted, inWords } from "../../../ui/count.ts";
import { gapText } from "../../../ui/gapWords.ts";
import { capital, listed, percent } from "../curveWords.ts";
import type { CalibrationPage, LeakReading, PullReading } from "./calibrationData.ts";

/** Nearer to the gap as set than this many standard uncertainties, the two agree [-]. */
const AGREES = 2;
const FRICTION_DECIMALS = 3;
const FACTOR_DECIMALS = 3;
const SCATTER_DIGITS = 2;

const inAWord = (count: number, one: string) => `${inWords(count)} ${count === 1 ? one : `${one}s`}`;

/** @returns "0.89 ± 0.02" */
export function factorText(mean: number, sd: number): string {
  const decimals = Math.min(FACTOR_DECIMALS, Math.max(2, decimalsFor(sd, 1)));
  return `${formatFixed(mean, decimals)} ± ${formatFixed(sd, decimals)}`;
}

const isConflict = ({ answer }: CalibrationPage) => answer.warnings.some(({ code }) => code === "conflict");

/** @returns "Five pulls put the pull factor at 0.89 ± 0.02: the skirt pulls less than its leak lets expect."; where they contradict, that */
export function factorSentence(page: CalibrationPage): string | null {
  const { answer, pulls, pair } = page;
  if (!answer.pullFactor) return null;
  const { mean, sd } = answer.pullFactor;
  const told = `put the pull factor at ${factorText(mean, sd)}`;
  if (pair.calibration.pullsTellGap) return `They ${told}.`;
  const who = capital(inAWord(pulls.length, "pull"));
  if (isConflict(page)) return `${who} ${told}, but contradict each other or the model.`;
  const agrees = Math.abs(mean - 1) <= AGREES * sd;
  if (agrees) return `${who} ${told}: the skirt pulls as its leak lets expect.`;
  return `${who} ${told}: the skirt pulls ${mean < 1 ? "less" : "more"} than its leak lets expect.`;
}

/** @returns "Seven pulls and one leak test put the gap at 0.47 ± 0.04 mm, not the 0.60 mm set."; where they contradict, that; of a leak test in the gap's place, its word alone */
export function calibrationSentence(page: CalibrationPage): string {
  const { pair, answer, pulls, leaks } = page;
  const { gap, gapBasis } = pair.skirt.data;
  const { pullsTellGap } = pair.calibration;
  const leakTests = new Set(leaks.map(({ testId }) => testId)).size;
  const tests = [
    ...(pullsTellGap ? [inAWord(pulls.length, "pull")] : []),
    ...(leakTests > 0 ? [inAWord(leakTests, "leak test")] : []),
  ];
  const { mean, sd } = answer.gap;
  const said = `the ${gapText(gap)} ${gapBasis === "measured" ? "measured" : "set"}`;
  const agreement = Math.abs(mean - gap) > AGREES * sd ? `not ${said}` : `in agreement with ${said}`;
  const conflict = pullsTellGap && isConflict(page);
  const against = conflict ? "but contradict each other or the model" : agreement;
  const put = !pullsTellGap && leakTests === 1 ? "puts" : "put";
  return `${capital(listed(tests))} ${put} the gap at ${gapText(mean, sd)}, ${against}.`;
}

/** @returns "0.39 to 0.55 mm"; "at most" or "at least" where the tests leave one side open */
export function intervalText({ interval: [lo, hi] }: Calibrated, show: (value: number) => string): string {
  if (hi === null) return `at least ${show(lo)}`;
  return lo === 0 ? `at most ${show(hi)}` : `${show(lo)} to ${show(hi)}`;
}

/** @returns friction with its uncertainty, "0.715 ± 0.012" */
export function frictionText(mean: number, sd: number): string {
  return `${formatFixed(mean, FRICTION_DECIMALS)} ± ${formatFixed(sd, FRICTION_DECIMALS)}`;
}

/** A bracket further from its prediction than this many scatters of a single pull lies outside [-]. */
export const OUTSIDE = 2;

/** @returns whether a bracket is reached by a predicted load and twice the scatter of a single pull about it */
export function isReached({ held, letGo }: PullReading, predicted: number, scatter: number): boolean {
  const room = OUTSIDE * scatter * predicted;
  return predicted + room >= held && (letGo === null || predicted - room <= letGo);
}

/** @returns the pulls that lie outside: their bracket is not reached */
export function outsideOf({ pulls, answer }: CalibrationPage): PullReading[] {
  return pulls.filter((pull) => !isReached(pull, pull.predicted, answer.scatter ?? 0));
}

/** @returns how many brackets are reached, as calibrated and as predicted before */
export function reachedText(page: CalibrationPage): string {
  const { pulls, answer } = page;
  const now = pulls.length - outsideOf(page).length;
  const before = pulls.filter((pull) => isReached(pull, pull.before, answer.scatter ?? 0)).length;
  return `${now} of ${counted(pulls.length, "bracket")}, ${before} before the tests`;
}

/** @returns how far a bracket's nearer end lies from its prediction, in words; "inside" within it */
export function offText({ held, letGo, predicted, inside }: PullReading): string {
  if (inside) return "inside";
  if (held > predicted) return `held ${percent(held / predicted - 1, SCATTER_DIGITS)} more than predicted`;
  return `let go ${percent(1 - (letGo ?? predicted) / predicted, SCATTER_DIGITS)} below the prediction`;
}

/** @returns a leak reading against its prediction, "2.1 % more" */
export function leakOffText({ measured, predicted }: LeakReading): string {
  const off = measured / predicted - 1;
  return `${percent(Math.abs(off), SCATTER_DIGITS)} ${off >= 0 ? "more" : "less"}`;
}

/** @returns what would tell more: tests that are lacking, pulls that were left out */
export function missingOf({ pair, answer, leaks }: CalibrationPage): string[] {
  const { leftOut } = pair.calibration;
  const missing: string[] = [];
  if (leaks.length === 0)
    missing.push(
      `A leak test of ${pair.skirt.data.name} on ${pair.surface.data.name}, the gap as it is set, would tell the gap without the rotor.`,
    );
  if (leftOut.length > 0)
    missing.push(
      `${capital(inAWord(leftOut.length, "pull"))} had to stay out: the book doesn't know rotor, motor or pack well enough.`,
    );
  return [...answer.warnings.map(({ message }) => message), ...missing];
}
