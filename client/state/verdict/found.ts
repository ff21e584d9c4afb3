import { keptWhile } from "../../../shared/book/keptWhile.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { verdictCase } from "../../../shared/book/verdictCase.ts";
import type { Findings } from "../../../shared/decide/verdict/findings.ts";
import { type Case, findingsOf } from "../../../shared/decide/verdict/judge.ts";
import { type Verdict, verdictOf } from "../../../shared/decide/verdict/verdict.ts";
import { type Answer, asProblem } from "../../../shared/numeric/errors.ts";
import { type ShownUnits, unitsShown } from "../../../shared/units/showing.ts";
import type { Outcome } from "../outcome.ts";

/** A solved build, found out as far as its verdict needs without sampling. */
export interface Found {
  readonly of: Case;
  readonly findings: Findings;
}

/** @returns what is found of a solved build; in words why nothing is; null where it has no numbers */
export function foundIn(book: Book, { build, resolved, prediction }: Outcome): Answer<Found> | null {
  const of = resolved && prediction && verdictCase(book, build, resolved);
  return of && asProblem(() => ({ of, findings: findingsOf(of, prediction) }));
}

const kept = keptWhile((book: Book, outcome: Outcome, _units: ShownUnits) => foundIn(book, outcome));

/** {@link foundIn} of the build on the screen, known until it is asked of another, or says its sentences in other units. */
export const foundOnScreen = (book: Book, outcome: Outcome): Answer<Found> | null =>
  kept(book, outcome, unitsShown());

/** @returns the verdict on a build beside the one on the screen, its chance not sampled; null where it has none */
export function verdictBeside(book: Book, outcome: Outcome): Verdict | null {
  const found = foundIn(book, outcome);
  return found && "answered" in found ? verdictOf(found.answered.findings) : null;
}
