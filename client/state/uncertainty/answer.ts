import type { UncertaintyAsked } from "../../../shared/book/uncertaintyAsked.ts";
import { type SampledUncertainty, sampledWithJoints } from "../../../shared/decide/joints/sampled.ts";
import { type Answer, asProblem } from "../../../shared/numeric/errors.ts";

export type UncertaintyReply = Answer<SampledUncertainty>;

/** @returns the uncertainty, or in words why there is none */
export function replyTo({
  input: build,
  joints,
  asked,
}: Pick<UncertaintyAsked, "input" | "joints" | "asked">): UncertaintyReply {
  return asProblem(() => sampledWithJoints({ build, joints }, asked));
}
