import { computed } from "@preact/signals";
import { keptWhile } from "../../shared/book/keptWhile.ts";
import { currentBook } from "./book.ts";
import { changes, current } from "./build.ts";
import { isChanged, type Outcome, solve } from "./outcome.ts";
import { withTried } from "./partsTried.ts";

/** {@link solve}, known until it is asked of another book or build. */
export const solvedAsStored = keptWhile(solve);

/** The build on the screen as it is stored, solved; null without one. */
export const storedOutcome = computed<Outcome | null>(() => {
  const [book, build] = [currentBook.value, current.value];
  return book && build ? solvedAsStored(book, build.data) : null;
});

/** The same with what is tried; the same object where nothing is. */
export const shownOutcome = computed<Outcome | null>(() => {
  const [book, build, tried] = [currentBook.value, current.value, changes.value];
  if (!book || !build || !isChanged(tried)) return storedOutcome.value;
  return solve(book, withTried(book, build.data, tried));
});
