import { useEffect, useRef } from "preact/hooks";
import { originsOf } from "../../../../shared/book/origins.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { LimitsInput } from "../../../../shared/decide/limits/input.ts";
import type { Limits } from "../../../../shared/decide/limits/limits.ts";
import { limitWorkings } from "../../../../shared/decide/limits/workings.ts";
import type { Board } from "../../../../shared/physics/working.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { Problem } from "../../../ui/Problem.tsx";
import { ShowWorking } from "../../../ui/working/ShowWorking.tsx";
import type { Question } from "../question.ts";
import { LimitTables } from "./LimitTables.tsx";
import { unbroken } from "./limitWords.ts";
import { useLimits } from "./useLimits.ts";
import { WindingChart } from "./WindingChart.tsx";

interface Props {
  readonly book: Book;
  readonly outcome: Outcome;
  /** the run that is on the screen: the same numbers, at the same charge */
  readonly question: Question;
}

/** How the winding's and the rotor's figures came about. */
function boardOf(book: Book, { build, resolved }: Outcome, input: LimitsInput, limits: Limits): Board {
  const origins = resolved ? originsOf({ book, build, resolved }) : [];
  return { workings: limitWorkings(input, limits), origins };
}

/** What burns or bursts first: one sentence, the winding from cold, every limit with its caution. */
export function LimitsSection({ book, outcome, question }: Props) {
  const { reply, asked, busy } = useLimits(book, outcome, question);
  const section = useRef<HTMLElement>(null);
  const shown = reply !== null;
  useEffect(() => {
    if (shown && location.hash === "#limits") section.current?.scrollIntoView();
  }, [shown]);
  return (
    <section
      ref={section}
      class="limits page-below"
      id="limits"
      aria-label="What burns or bursts first"
      aria-busy={busy}
    >
      <h2>What burns or bursts first</h2>
      {!reply && <p class="quiet">Working the limits out…</p>}
      {reply && "problem" in reply && <Problem message={reply.problem} />}
      {reply && "answered" in reply && (
        <>
          <p class="limits-answer">{unbroken(reply.answered.first.sentence)}</p>
          <p class="quiet small">
            At {(100 * reply.answered.charge).toFixed(0)} % charge; all but the winding just switched on,
            cold, when most flows. Near: from 80 % of the way to the limit on.
          </p>
          <div class="limits-columns">
            <WindingChart limits={reply.answered} build={outcome.build.name} />
            <LimitTables limits={reply.answered} />
          </div>
          {asked && <ShowWorking of={() => boardOf(book, outcome, asked, reply.answered)} />}
        </>
      )}
    </section>
  );
}
