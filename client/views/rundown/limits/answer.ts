import type { LimitsInput } from "../../../../shared/decide/limits/input.ts";
import { type Limits, limitsOf } from "../../../../shared/decide/limits/limits.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";

export type LimitsReply = Answer<Limits>;

/** @returns the limits, or in words why there are none */
export function replyTo(input: LimitsInput): LimitsReply {
  return asProblem(() => limitsOf(input));
}
