import type { VerdictState } from "./states.ts";
import type { Verdict } from "./verdict.ts";
import { sentenceOf } from "./words.ts";

/** A verdict as the API tells it. */
export interface ToldVerdict {
  readonly state: VerdictState;
  readonly reason: string;
  /** of the least margin [°]; absent where none counts: nothing is needed, or the build does not last */
  readonly angle?: number;
  readonly margin?: number;
}

/**
 * A verdict as the API tells it.
 *
 *     state, reason in one sentence, least margin and its angle
 *
 * @param verdict - from {@link verdictOf}
 * @param more - sentences that follow the reason [-]
 * @returns state, reason, angle [°] and margin [-]
 *
 * Valid for any verdict
 */
export function told(verdict: Verdict, more = ""): ToldVerdict {
  const { state, least } = verdict;
  const reason = [sentenceOf(verdict), more].filter(Boolean).join(" ");
  const lasts = state !== "bursts" && state !== "burns";
  return lasts && least ? { state, reason, angle: least.angle, margin: least.margin } : { state, reason };
}
