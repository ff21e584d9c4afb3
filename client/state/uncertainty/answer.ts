import type { UncertaintyAsked } from "../../../shared/book/uncertaintyAsked.ts";
import { type Uncertainty, uncertaintyOf } from "../../../shared/decide/uncertainty.ts";
import { NotEnoughDataError, OutOfRangeError } from "../../../shared/numeric/errors.ts";

export type UncertaintyReply = { readonly doubt: Uncertainty } | { readonly problem: string };

/** @returns the doubt, or in words why there is none */
export function replyTo({ input, asked }: Pick<UncertaintyAsked, "input" | "asked">): UncertaintyReply {
  try {
    return { doubt: uncertaintyOf(input, asked) };
  } catch (error) {
    if (!(error instanceof OutOfRangeError || error instanceof NotEnoughDataError)) throw error;
    return { problem: `${error.message}.`.replace(/\.\.$/, ".") };
  }
}
