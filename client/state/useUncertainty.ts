import { computed } from "@preact/signals";
import type { BuildUncertainty } from "../../shared/book/buildUncertainty.ts";
import {
  askedSteps,
  statesUncertainty,
  type UncertaintyAsked,
  uncertaintyAsked,
} from "../../shared/book/uncertaintyAsked.ts";
import type { JointsUnder } from "../../shared/decide/joints/crossed.ts";
import type { SampledUncertainty } from "../../shared/decide/joints/sampled.ts";
import type { AttitudeUncertainty, StatedUncertainty } from "../../shared/decide/uncertainty.ts";
import { asking } from "../threads/ask.ts";
import { SharedTask, useShared } from "../threads/sharedTask.ts";
import { currentBook } from "./book.ts";
import { current } from "./build.ts";
import { inSteps } from "./inSteps.ts";
import { shownOutcome } from "./onScreen.ts";
import type { UncertaintyReply } from "./uncertainty/answer.ts";

/** How sure a build's verdict is, as far as it is worked out. */
export interface UncertaintyState {
  /** the last one worked out; null before the first, and where nothing is uncertain or there is no answer */
  readonly doubt: SampledUncertainty | null;
  /** on the attitudes that were worst when it was asked */
  readonly worst: { readonly parked: AttitudeUncertainty; readonly driving: AttitudeUncertainty } | null;
  /** what is sampled of the build as it is now; null where nothing is */
  readonly asked: StatedUncertainty | null;
  /** of its surface, of the build as it is now; null: none */
  readonly joints: JointsUnder | null;
  /** where each uncertainty comes from, by path; of the build as it is now */
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
    asked: stated ? question.asked : null,
    joints: question?.joints ?? null,
    sources: question?.sources ?? {},
    nothingStated: question !== null && !stated,
    problem: stated && reply && "problem" in reply ? reply.problem : null,
    busy: stated && busy,
  };
}

/** A question with the build it is about: of another build no answer stays. */
interface OfBuild extends UncertaintyAsked {
  readonly build: string;
}

const question = computed<OfBuild | null>(() => {
  const [book, build, outcome] = [currentBook.value, current.value, shownOutcome.value];
  const asked = book && outcome && uncertaintyAsked(book, outcome);
  return build && asked ? { ...asked, build: build.id } : null;
});

const thread = asking("uncertainty");

/** Lets the sampling thread start and fetch its code, ahead of the build that it will be asked about. */
export const prepareSampling = (): void => thread.prepare();

/** Gathers what is uncertain in the build on the screen, so that the question is made of it at once. */
async function gatherAhead(isWanted: () => boolean): Promise<void> {
  const [book, outcome] = [currentBook.peek(), shownOutcome.peek()];
  if (book && outcome) await inSteps(askedSteps(book, outcome), isWanted);
}

const sampler = new SharedTask<OfBuild, UncertaintyReply>(
  thread,
  computed(() => (question.value && statesUncertainty(question.value) ? question.value : null)),
  FAILED,
  gatherAhead,
);

/** Before the first verdict is painted: what it is unsure of is gathered behind it. */
const NOT_YET: UncertaintyState = { ...uncertaintyState(null, null, false), busy: true };

/** How sure the verdict on the build on the screen is; sampled while a view uses it. */
export const uncertaintyNow = computed<UncertaintyState>(() => {
  if (!sampler.begun.value) return NOT_YET;
  const { reply, asked, busy } = sampler.worked.value;
  const own = asked?.build === current.value?.id ? reply : null;
  return uncertaintyState(question.value, own, busy);
});

/** @returns how sure the verdict on the build on the screen is, sampled in another thread; the last answer stays while the next is worked out */
export function useUncertainty(): UncertaintyState {
  useShared(sampler);
  return uncertaintyNow.value;
}
