import { useMemo } from "preact/hooks";
import type { BuildUncertainty } from "../../shared/book/buildUncertainty.ts";
import type { Book } from "../../shared/book/resolve.ts";
import {
  statesUncertainty,
  type UncertaintyAsked,
  uncertaintyAsked,
} from "../../shared/book/uncertaintyAsked.ts";
import type { AttitudeUncertainty, Uncertainty } from "../../shared/decide/uncertainty.ts";
import type { Outcome } from "./outcome.ts";
import type { UncertaintyReply } from "./uncertainty/answer.ts";
import { useWorker } from "./useWorker.ts";

/** How sure a build's verdict is, as far as it is worked out. */
export interface UncertaintyState {
  /** the last one worked out; null before the first, and where nothing is uncertain or there is no answer */
  readonly doubt: Uncertainty | null;
  /** on the attitudes that were worst when it was asked */
  readonly worst: { readonly parked: AttitudeUncertainty; readonly driving: AttitudeUncertainty } | null;
  /** where each doubt comes from, by path; of the build as it is now */
  readonly sources: BuildUncertainty["sources"];
  /** no number of the build has an uncertainty: how sure can't be said */
  readonly nothingStated: boolean;
  /** why there is no answer */
  readonly problem: string | null;
  /** a newer one is on its way */
  readonly busy: boolean;
}

const FAILED: UncertaintyReply = {
  problem: "How sure it is could not be worked out in this browser; reload the page.",
};

const start = () => new Worker(new URL("./uncertainty/worker.ts", import.meta.url), { type: "module" });

/** @returns what a reply says of the question that stands now */
export function uncertaintyState(
  question: UncertaintyAsked | null,
  reply: UncertaintyReply | null,
  busy: boolean,
): UncertaintyState {
  const stated = question !== null && statesUncertainty(question);
  const doubt = stated && reply && "answered" in reply ? reply.answered : null;
  const [parked, driving] = doubt?.attitudes.slice(-2) ?? [];
  return {
    doubt,
    worst: parked && driving ? { parked, driving } : null,
    sources: question?.sources ?? {},
    nothingStated: question !== null && !stated,
    problem: stated && reply && "problem" in reply ? reply.problem : null,
    busy: stated && busy,
  };
}

/**
 * How sure a build's verdict is, sampled in a thread of its own; the last answer stays while the next is worked out.
 *
 * @param book - the whole bench book
 * @param outcome - the solved build, the same object while nothing changed
 * @returns the doubt with its sources; call it once a view and hand it on
 */
export function useUncertainty(book: Book, outcome: Outcome): UncertaintyState {
  const question = useMemo(() => uncertaintyAsked(book, outcome), [book, outcome]);
  const asked = question && statesUncertainty(question) ? question : null;
  const { reply, busy } = useWorker<UncertaintyAsked, UncertaintyReply>(start, asked, FAILED);
  return uncertaintyState(question, reply, busy);
}
