import { useMemo } from "preact/hooks";
import { limitsInput } from "../../../../shared/book/limitsInput.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { useTask } from "../../../threads/useTask.ts";
import type { Question } from "../question.ts";
import type { LimitsReply } from "./answer.ts";

const FAILED: LimitsReply = {
  problem: "The limits could not be worked out in this browser; reload the page.",
};

/** @returns what burns or bursts first in a run, worked out in a thread of its own; null asks nothing */
export function useLimits(book: Book, outcome: Outcome, question: Question | null) {
  const input = useMemo(
    () => question && limitsInput(book, outcome.build, question.input),
    [book, outcome.build, question],
  );
  return useTask("limits", input, FAILED);
}
