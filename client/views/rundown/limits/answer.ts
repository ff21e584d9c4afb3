import type { LimitsInput } from "../../../../shared/decide/limits/input.ts";
import { type Limits, limitsOf } from "../../../../shared/decide/limits/limits.ts";
import { NotEnoughDataError, OutOfRangeError } from "../../../../shared/numeric/errors.ts";

export type LimitsReply = { readonly limits: Limits } | { readonly problem: string };

/** @returns the limits, or in words why there are none */
export function replyTo(input: LimitsInput): LimitsReply {
  try {
    return { limits: limitsOf(input) };
  } catch (error) {
    if (!(error instanceof OutOfRangeError || error instanceof NotEnoughDataError)) throw error;
    return { problem: `${error.message}.`.replace(/\.\.$/, ".") };
  }
}
