import { useMemo, useRef } from "preact/hooks";
import type { Book } from "../../../../shared/book/resolve.ts";
import { bookAsOf } from "../../../state/book.ts";
import { current } from "../../../state/build.ts";
import { storedOutcome } from "../../../state/onScreen.ts";
import type { Outcome } from "../../../state/outcome.ts";
import type { UncertaintyState } from "../../../state/useUncertainty.ts";
import type { Worked } from "../../../threads/asker.ts";
import { useTask } from "../../../threads/useTask.ts";
import { wanted, wantedOf } from "../ways/wanted.ts";
import type { Reply } from "./answer.ts";
import { type Question, questionOf } from "./question.ts";
import { useServed } from "./served.ts";

const FAILED: Reply = { problem: "The next test could not be worked out in this browser; reload the page." };

/** What was found, and the question that stands; null where there is none. */
export interface FoundNext extends Worked<Question, Reply> {
  readonly question: Question | null;
}

/** The build as the server knows it; null while something is tried, and of a book that this device kept. */
const storedOf = (outcome: Outcome) =>
  bookAsOf.value === null && outcome === storedOutcome.value ? current.value : null;

/** @returns the tests that would shrink the uncertainty about the wanted attitude most, asked of the server for what it knows, else looked for in a thread of their own */
export function useNextTests(book: Book, outcome: Outcome, sure: UncertaintyState): FoundNext {
  const chosen = wantedOf(outcome, wanted.value);
  const question = useMemo(
    () => (sure.nothingStated ? null : questionOf(book, outcome, chosen)),
    [book, outcome, sure.nothingStated, chosen.attitude, chosen.mode],
  );
  const stored = storedOf(outcome);
  const served = useServed(question, stored);
  const isOpen = stored !== null && served?.question !== question;
  const own = useTask("nextTest", isOpen || (stored && served?.found) ? null : question, FAILED);
  const last = useRef<Pick<FoundNext, "reply" | "asked">>(own);
  if (stored && served?.found && !isOpen)
    last.current = { reply: { answered: served.found }, asked: served.question };
  else if (own.asked === question || last.current.asked === null) last.current = own;
  const { reply, asked } = last.current;
  return { reply, asked, question, busy: question !== null && asked !== question };
}
