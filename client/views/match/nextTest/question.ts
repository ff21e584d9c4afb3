import type { Book } from "../../../../shared/book/book.ts";
import { bookOfBuild } from "../../../../shared/book/bookOfBuild.ts";
import { newestFirst } from "../../../../shared/book/newestFirst.ts";
import type { WantedVerdict } from "../../../../shared/book/nextTest/nextTests.ts";
import { solvable } from "../../../../shared/book/resolve.ts";
import type { Wanted } from "../../../../shared/decide/wanted.ts";
import type { Build } from "../../../../shared/model/build.ts";
import type { Outcome } from "../../../state/outcome.ts";

/** What is asked of the other thread, all of it plain data. */
export interface Question {
  /** what the build rests on, no more */
  readonly book: Book;
  readonly build: Build;
  readonly verdict: WantedVerdict;
  /** as it was chosen: the verdict's angle may be the worst one */
  readonly wanted: Wanted;
}

/** @returns the question that a build and a wanted attitude make; null where the build has no numbers yet */
export function questionOf(book: Book, outcome: Outcome, wanted: Wanted): Question | null {
  const { build, resolved, prediction } = outcome;
  if (!resolved || !solvable(resolved) || !prediction) return null;
  const { attitude, mode } = wanted;
  const angle = attitude === "worst" ? prediction.worst[mode].angle : attitude;
  const light = bookOfBuild(book, build);
  // Samples are drawn in the tests' order: the same whatever was logged since the book was read.
  return { book: { ...light, tests: newestFirst(light.tests) }, build, verdict: { angle, mode }, wanted };
}
