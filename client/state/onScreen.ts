import { computed } from "@preact/signals";
import type { Book } from "../../shared/book/book.ts";
import { keptWhile } from "../../shared/book/keptWhile.ts";
import type { Build } from "../../shared/model/build.ts";
import { type ShownUnits, unitsShown } from "../../shared/units/showing.ts";
import { currentBook } from "./book.ts";
import { changes, current } from "./build.ts";
import { isChanged, type Outcome, solve } from "./outcome.ts";
import { withTried } from "./partsTried.ts";

const kept = keptWhile((book: Book, build: Build, _units: ShownUnits) => solve(book, build));

/** {@link solve}, known until it is asked of another book or build, or says its sentences in other units. */
export const solvedAsStored = (book: Book, build: Build): Outcome => kept(book, build, unitsShown());

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
