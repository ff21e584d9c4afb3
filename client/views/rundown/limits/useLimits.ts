import { useMemo } from "preact/hooks";
import { limitsInput } from "../../../../shared/book/limitsInput.ts";
import type { Book } from "../../../../shared/book/resolve.ts";
import type { LimitsInput } from "../../../../shared/decide/limits/input.ts";
import type { Outcome } from "../../../state/outcome.ts";
import { useWorker } from "../../../state/useWorker.ts";
import type { Question } from "../question.ts";
import type { LimitsReply } from "./answer.ts";

const FAILED: LimitsReply = {
  problem: "The limits could not be worked out in this browser; reload the page.",
};

const start = () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });

/** @returns what burns or bursts first in a run, worked out in a thread of its own; null asks nothing */
export function useLimits(book: Book, outcome: Outcome, question: Question | null) {
  const input = useMemo(
    () => question && limitsInput(book, outcome.build, question.input),
    [book, outcome.build, question],
  );
  return useWorker<LimitsInput, LimitsReply>(start, input, FAILED);
}
