import { type NextTests, nextTests } from "../../../../shared/book/nextTest/nextTests.ts";
import { type Answer, asProblem } from "../../../../shared/numeric/errors.ts";
import type { Question } from "./question.ts";

export type Reply = Answer<NextTests>;

/** @returns the next tests, or in words why there are none */
export function replyTo({ book, build, verdict }: Question): Reply {
  return asProblem(() => nextTests(book, build, verdict));
}
