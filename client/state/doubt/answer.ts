import { type Doubt, doubtOf } from "../../../shared/decide/uncertainty.ts";
import { NotEnoughDataError, OutOfRangeError } from "../../../shared/numeric/errors.ts";
import type { DoubtQuestion } from "./question.ts";

export type DoubtReply = { readonly doubt: Doubt } | { readonly problem: string };

/** @returns the doubt, or in words why there is none */
export function replyTo({ input, asked }: Pick<DoubtQuestion, "input" | "asked">): DoubtReply {
  try {
    return { doubt: doubtOf(input, asked) };
  } catch (error) {
    if (!(error instanceof OutOfRangeError || error instanceof NotEnoughDataError)) throw error;
    return { problem: `${error.message}.`.replace(/\.\.$/, ".") };
  }
}
