import type { Book } from "../../../../shared/book/book.ts";
import { marginText } from "../../../../shared/decide/verdict/figures.ts";
import { isDestroyed } from "../../../../shared/decide/verdict/states.ts";
import type { ChooseJob } from "../../../../shared/model/api/choose.ts";
import { formatFixed } from "../../../../shared/units/format.ts";
import type { Combination, ShortlistAnswer } from "../answers.ts";
import type { Preview } from "../preview/answer.ts";
import type { BestCombination } from "../state/job.ts";
import { massText, sizedRotorText } from "./combination.ts";
import { LIMIT_NAMES } from "./limits.ts";

type Judged = ShortlistAnswer["items"][number];
type Counts = Pick<ChooseJob, "sets" | "admissible">;

const whole = (count: number) => formatFixed(count, 0);
const combinations = (count: number) => `${whole(count)} ${count === 1 ? "combination" : "combinations"}`;

/** The surest is the one that its verdict puts first; where even that doesn't hold, its verdict is what is said of it. */
function surestText({ verdict: { state }, margin5 }: Judged): string {
  if (isDestroyed(state)) return `the best of the shortlist ${state}`;
  if (state === "falls") return "the best of the shortlist falls from somewhere";
  if (margin5 === null) return "";
  const reached = `at least ${marginText(margin5)} in 95 of 100 cases`;
  return state === "over-rating"
    ? `the best of the shortlist has ${reached} and is over a rating`
    : `the surest has ${reached}`;
}

/** @returns the view's answer: how many work, the lightest, the surest as far as it is known */
export function answerSentence(
  { sets, admissible }: Counts,
  lightest: Combination | null,
  surest: Judged | null,
): string {
  if (admissible === 0)
    return sets === 1
      ? "The one combination does not work."
      : `None of the ${whole(sets)} combinations works.`;
  const count = `${whole(admissible)} of ${combinations(sets)} ${admissible === 1 ? "works" : "work"}`;
  const mass = lightest?.values.mass;
  const light = typeof mass === "number" ? `the lightest weighs ${massText(mass)}` : "";
  const sure = surest ? surestText(surest) : "";
  const said = [light, sure].filter(Boolean).join(", ");
  return `${count}${said && `; ${said}`}.`;
}

/** @returns how far a running job is, one line */
export function progressText({ state, sets, solved, admissible, seconds }: ChooseJob): string {
  if (state === "queued") return `${combinations(sets)} wait for another search to end.`;
  const rate = seconds > 0 && solved > 0 ? `, ${rateText(solved / seconds)} combinations a second` : "";
  return `${whole(solved)} of ${combinations(sets)} solved, ${whole(admissible)} of them work so far${rate}.`;
}

/** @returns the best combination so far, in short */
export function bestText(book: Book, combination: BestCombination): string {
  const { margin } = combination.values;
  return `${margin === null ? "no pull needed" : marginText(margin)}, ${sizedRotorText(book, combination)}`;
}

const DIGITS = 2;

/** A rate to two digits: more of them would only flicker. */
function rateText(perSecond: number): string {
  return whole(Number(perSecond.toPrecision(DIGITS)));
}

const SHORT = 0.1;

/** @returns how long an ended job took */
export function tookText({ sets, seconds }: ChooseJob): string {
  const took = seconds < SHORT ? "less than a tenth of a second" : `${formatFixed(seconds, 1)}\u202fs`;
  return `${combinations(sets)} solved in ${took}.`;
}

/** @returns what the question on the form would bring, tried while it is typed */
export function previewText({ tried, admissible, keepsOut }: Preview): string {
  const count = admissible === 0 ? "None" : admissible === tried ? "Every one" : whole(admissible);
  const verb = admissible <= 1 || admissible === tried ? "works" : "work";
  const most = keepsOut
    ? `; ${LIMIT_NAMES[keepsOut.limit] ?? keepsOut.limit} keeps out most, ${whole(keepsOut.broken)}`
    : "";
  return `${count} of them ${verb}${most}.`;
}
