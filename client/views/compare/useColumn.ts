import { useLayoutEffect, useMemo } from "preact/hooks";
import { type PartsPrice, partsPrice } from "../../../shared/book/partsPrice.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { statesUncertainty, uncertaintyAsked } from "../../../shared/book/uncertaintyAsked.ts";
import type { LimitsInput } from "../../../shared/decide/limits/input.ts";
import type { Limits } from "../../../shared/decide/limits/limits.ts";
import { timedVerdict } from "../../../shared/decide/verdict/concluded.ts";
import { chanceOf } from "../../../shared/decide/verdict/judge.ts";
import type { Verdict } from "../../../shared/decide/verdict/verdict.ts";
import type { Build } from "../../../shared/model/build.ts";
import { asProblem } from "../../../shared/numeric/errors.ts";
import { type Outcome, solve } from "../../state/outcome.ts";
import type { UncertaintyReply } from "../../state/uncertainty/answer.ts";
import { type UncertaintyState, uncertaintyState } from "../../state/useUncertainty.ts";
import { foundIn } from "../../state/verdict/found.ts";
import { useTask } from "../../threads/useTask.ts";
import { type Headroom, headroomOf } from "../mass/headroom.ts";
import type { Answered as Run } from "../rundown/answer.ts";
import { useLimits } from "../rundown/limits/useLimits.ts";
import { fromFull, questionOf } from "../rundown/question.ts";
import { useRun } from "../rundown/useRun.ts";

/** A build that stands beside others: a stored one, or one made of a pinned combination. */
export interface Compared {
  readonly key: string;
  /** "A", "B": as the table and its sentences call it */
  readonly letter: string;
  readonly name: string;
  readonly build: Build;
  /** identifier of the stored build; null: it is not stored */
  readonly stored: string | null;
}

/** All that is said of one of them; the same figures as on its own views. */
export interface Column extends Compared {
  readonly outcome: Outcome;
  readonly sure: UncertaintyState;
  /** with the chance of holding, once that is sampled */
  readonly verdict: Verdict | null;
  /** from a full charge; null where there is none, or not yet */
  readonly run: Run | null;
  /** null likewise */
  readonly limits: Limits | null;
  /** what the limits are made from, for their working; null likewise */
  readonly limitsInput: LimitsInput | null;
  readonly headroom: Headroom;
  readonly price: PartsPrice;
  /** what could not be worked out, in words */
  readonly problems: readonly string[];
  /** run or limits are still worked out */
  readonly isRunning: boolean;
}

const FAILED: UncertaintyReply = {
  problem: "How sure it is could not be worked out in this browser; reload the page.",
};

const answered = <A>(reply: { readonly answered: A } | { readonly problem: string } | null): A | null =>
  reply && "answered" in reply ? reply.answered : null;

function useSure(book: Book, outcome: Outcome): UncertaintyState {
  const asked = useMemo(() => uncertaintyAsked(book, outcome), [book, outcome]);
  const { reply, busy } = useTask("uncertainty", asked && statesUncertainty(asked) ? asked : null, FAILED);
  return useMemo(() => uncertaintyState(asked, reply, busy), [asked, reply, busy]);
}

/** As the band gives it, the seconds until it burns included. */
function useVerdictOf(book: Book, outcome: Outcome, { doubt }: UncertaintyState) {
  const found = useMemo(() => foundIn(book, outcome), [book, outcome]);
  return useMemo(() => {
    if (!found || !("answered" in found)) return { verdict: null, problem: found?.problem ?? null };
    const { of, findings } = found.answered;
    const made = asProblem(() => timedVerdict(of, { ...findings, chance: chanceOf(doubt, of.attitudes) }));
    return "answered" in made ? { verdict: made.answered, problem: null } : { verdict: null, ...made };
  }, [found, doubt]);
}

/** Everything that is said of one build, each asked of the thread that its own view asks. */
function useColumn(book: Book, compared: Compared): Column {
  const { build } = compared;
  const outcome = useMemo(() => solve(book, build), [book, build]);
  const sure = useSure(book, outcome);
  const found = useVerdictOf(book, outcome, sure);
  const question = useMemo(() => questionOf(book, outcome, fromFull(outcome.build)), [book, outcome]);
  const run = useRun(question);
  const limits = useLimits(book, outcome, question);
  const headroom = useMemo(() => headroomOf(book, build), [book, build]);
  const price = useMemo(() => partsPrice(book, build), [book, build]);
  const isRunning = question !== null && (run.busy || limits.busy);
  return useMemo(() => {
    const problems = [outcome, found, sure, run.reply, limits.reply].flatMap((each) =>
      each && "problem" in each && each.problem !== null ? [each.problem] : [],
    );
    return {
      ...compared,
      outcome,
      sure,
      verdict: found.verdict,
      run: answered(question && run.reply),
      limits: answered(question && limits.reply),
      limitsInput: limits.asked,
      headroom,
      price,
      problems: [...new Set(problems)],
      isRunning,
    };
  }, [compared, outcome, sure, found, run.reply, limits.reply, headroom, price, isRunning]);
}

export interface ColumnWorkerProps {
  readonly book: Book;
  readonly compared: Compared;
  readonly onColumn: (column: Column) => void;
}

/** Works one column out and shows nothing: the table has its columns side by side, and rows across them. */
export function ColumnWorker({ book, compared, onColumn }: ColumnWorkerProps) {
  const column = useColumn(book, compared);
  useLayoutEffect(() => onColumn(column), [column]);
  return null;
}
