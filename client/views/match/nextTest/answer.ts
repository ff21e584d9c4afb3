import { type NextTests, nextTests } from "../../../../shared/book/nextTest/nextTests.ts";
import {
  NoConvergenceError,
  NotEnoughDataError,
  OutOfRangeError,
} from "../../../../shared/numeric/errors.ts";
import type { Question } from "./question.ts";

export type Reply = { readonly answered: NextTests } | { readonly problem: string };

/** @returns the next tests, or in words why there are none */
export function replyTo({ book, build, verdict }: Question): Reply {
  try {
    return { answered: nextTests(book, build, verdict) };
  } catch (error) {
    const known = [OutOfRangeError, NotEnoughDataError, NoConvergenceError];
    if (!(error instanceof Error && known.some((kind) => error instanceof kind))) throw error;
    return { problem: `${error.message}.`.replace(/\.\.$/, ".") };
  }
}
