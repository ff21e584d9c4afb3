import type { UncertaintyAsked } from "../../../shared/book/uncertaintyAsked.ts";
import { type Uncertainty, uncertaintyOf } from "../../../shared/decide/uncertainty.ts";
import { type Answer, asProblem } from "../../../shared/numeric/errors.ts";

export type UncertaintyReply = Answer<Uncertainty>;

/** @returns the doubt, or in words why there is none */
export function replyTo({ input, asked }: Pick<UncertaintyAsked, "input" | "asked">): UncertaintyReply {
  return asProblem(() => uncertaintyOf(input, asked));
}
