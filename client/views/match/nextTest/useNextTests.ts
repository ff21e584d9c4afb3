import { useMemo } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Outcome } from "../../../state/outcome.ts";
import type { UncertaintyState } from "../../../state/useUncertainty.ts";
import type { Worked } from "../../../threads/asker.ts";
import { useTask } from "../../../threads/useTask.ts";
import { wanted, wantedOf } from "../ways/wanted.ts";
import type { Reply } from "./answer.ts";
import { type Question, questionOf } from "./question.ts";

const FAILED: Reply = { problem: "The next test could not be worked out in this browser; reload the page." };

/** What was found, and the question that stands; null where there is none. */
export interface FoundNext extends Worked<Question, Reply> {
  readonly question: Question | null;
}

/** @returns the tests that would shrink the uncertainty about the wanted attitude most, looked for in a thread of their own */
export function useNextTests(book: Book, outcome: Outcome, sure: UncertaintyState): FoundNext {
  const chosen = wantedOf(outcome, wanted.value);
  const question = useMemo(
    () => (sure.nothingStated ? null : questionOf(book, outcome, chosen)),
    [book, outcome, sure.nothingStated, chosen.attitude, chosen.mode],
  );
  const worked = useTask("nextTest", question, FAILED);
  return { ...worked, question, busy: question !== null && worked.busy };
}
