import { useMemo } from "preact/hooks";
import { type FitStack, fitStacks } from "../../../shared/book/fitUp/fitStack.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import type { Limits } from "../../../shared/decide/limits/limits.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { Outcome } from "../../state/outcome.ts";
import { useOutcomes } from "../../state/useOutcomes.ts";
import { type UncertaintyState, useUncertainty } from "../../state/useUncertainty.ts";
import { type ShownVerdict, useVerdict } from "../../state/verdict/useVerdict.ts";
import { type Headroom, headroomOf } from "../mass/headroom.ts";
import { type FoundNext, useNextTests } from "../match/nextTest/useNextTests.ts";
import type { Answered as Run } from "../rundown/answer.ts";
import { useLimits } from "../rundown/limits/useLimits.ts";
import { fromFull, questionOf } from "../rundown/question.ts";
import { useRun } from "../rundown/useRun.ts";

/** All that is put on record of a build, as far as it is worked out. */
export interface Sheet {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
  /** with what is tried */
  readonly outcome: Outcome;
  readonly verdict: ShownVerdict;
  readonly sure: UncertaintyState;
  /** from a full charge; null where there is none, or not yet */
  readonly run: Run | null;
  /** null likewise */
  readonly limits: Limits | null;
  readonly next: FoundNext;
  readonly headroom: Headroom;
  readonly fits: readonly FitStack[];
  /** what could not be worked out, in words */
  readonly problems: readonly string[];
  /** something is still worked out */
  readonly busy: boolean;
  /** all but the next tests is worked out */
  readonly settled: boolean;
}

/** @returns everything that a build's sheet says, each asked of the thread that its own view asks */
export function useSheet(book: Book, build: StoredOf<"builds">): Sheet {
  const { outcome } = useOutcomes(build);
  const sure = useUncertainty();
  const verdict = useVerdict();
  const question = useMemo(() => questionOf(book, outcome, fromFull(outcome.build)), [book, outcome]);
  const run = useRun(question);
  const limits = useLimits(book, outcome, question);
  const next = useNextTests(book, outcome, sure);
  const headroom = useMemo(() => headroomOf(book, outcome.build), [book, outcome]);
  const fits = useMemo(() => fitStacks(book, outcome.build), [book, outcome]);
  const replies = [run.reply, limits.reply, next.reply];
  const running = question !== null && (run.busy || limits.busy);
  const judging = verdict.verdict !== null && verdict.ways === null && verdict.problem === null;
  const settled = !(running || judging || sure.busy);
  return {
    book,
    build,
    outcome,
    verdict,
    sure,
    run: question && run.reply && "answered" in run.reply ? run.reply.answered : null,
    limits: question && limits.reply && "answered" in limits.reply ? limits.reply.answered : null,
    next,
    headroom,
    fits,
    problems: replies.flatMap((reply) => (reply && "problem" in reply ? [reply.problem] : [])),
    busy: !settled || next.busy,
    settled,
  };
}
