import type { Book } from "../../shared/book/book.ts";
import type { Steps } from "../../shared/book/steps.ts";
import type { Build } from "../../shared/model/build.ts";
import { route } from "../app/router.ts";
import { shownIn, showsBuild } from "./build.ts";
import { calibrateAhead } from "./calibratedAhead.ts";
import { inSteps } from "./inSteps.ts";
import { solvedAsStored } from "./onScreen.ts";
import { foundOnScreen } from "./verdict/found.ts";

function* solving(book: Book, build: Build): Steps<void> {
  const outcome = solvedAsStored(book, build);
  yield;
  foundOnScreen(book, outcome);
  yield;
}

/**
 * Works out the build that a book is about to be shown with, a step at a time, so that drawing it is all that is left.
 *
 * @param book - not yet on the screen
 * @param signal - gives it up
 */
export async function solveAhead(book: Book, signal: AbortSignal): Promise<void> {
  await calibrateAhead(book, signal);
  const build = showsBuild(route.peek().view) ? shownIn(book) : null;
  if (build && !signal.aborted) await inSteps(solving(book, build.data), () => !signal.aborted);
}
