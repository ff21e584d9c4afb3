import { computed } from "@preact/signals";
import type { Crossing } from "../../../shared/decide/verdict/findings.ts";
import { chanceOf } from "../../../shared/decide/verdict/judge.ts";
import { type Verdict, verdictOf } from "../../../shared/decide/verdict/verdict.ts";
import type { WayOut } from "../../../shared/decide/verdict/wayOut.ts";
import { asking } from "../../threads/ask.ts";
import { SharedTask, useShared } from "../../threads/sharedTask.ts";
import { currentBook } from "../book.ts";
import { settled } from "../build.ts";
import { shownOutcome } from "../onScreen.ts";
import { uncertaintyNow, useUncertainty } from "../useUncertainty.ts";
import type { VerdictQuestion, VerdictReply } from "./answer.ts";
import { type Found, foundOnScreen } from "./found.ts";

/** The verdict on the build on the screen, as far as it is worked out. */
export interface ShownVerdict {
  /** null where the build has no numbers, or no answer */
  readonly verdict: Verdict | null;
  /** what the build holds over each joint of its surface, the least margin first */
  readonly crossings: readonly Crossing[];
  /** null while they are looked for */
  readonly ways: readonly WayOut[] | null;
  /** why there is no verdict although the build has numbers, or no way out */
  readonly problem: string | null;
}

const FAILED: VerdictReply = {
  problem: "What to do about it could not be worked out in this browser; reload the page.",
};

const found = computed(() => {
  const [book, outcome] = [currentBook.value, shownOutcome.value];
  return book && outcome ? foundOnScreen(book, outcome) : null;
});

/** With the chance of holding, as far as it is sampled. */
const sampled = computed<Found | null>(() => {
  const now = found.value;
  if (!now || !("answered" in now)) return null;
  const { of, findings } = now.answered;
  return { of, findings: { ...findings, chance: chanceOf(uncertaintyNow.value.doubt, of.attitudes) } };
});

const verdictNow = computed(() => sampled.value && verdictOf(sampled.value.findings));

/** Asked once nothing moves any more and the chance is there. */
const question = computed<VerdictQuestion | null>(() => {
  const { asked, busy } = uncertaintyNow.value;
  return sampled.value && settled.value && !busy ? { ...sampled.value, asked } : null;
});

const finisher = new SharedTask<VerdictQuestion, VerdictReply>(asking("verdict"), question, FAILED);

const shown = computed<ShownVerdict>(() => {
  const now = found.value;
  const problem = now && "problem" in now ? now.problem : null;
  const { reply, asked } = finisher.worked.value;
  const crossings = now && "answered" in now ? now.answered.findings.crossings : [];
  const first = { verdict: verdictNow.value, crossings, ways: null, problem };
  if (!reply || asked === null || asked !== question.value) return first;
  return "answered" in reply
    ? { ...first, ...reply.answered, problem: null }
    : { ...first, ways: [], problem: reply.problem };
});

/** @returns the verdict on the build on the screen; its chance, and what to do about it, follow from another thread */
export function useVerdict(): ShownVerdict {
  useUncertainty();
  useShared(finisher);
  return shown.value;
}
