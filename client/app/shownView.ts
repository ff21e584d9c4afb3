import { batch, signal } from "@preact/signals";
import type { ComponentType } from "preact";
import type { Book } from "../../shared/book/book.ts";
import { ApiError, PATIENCE } from "../state/api.ts";
import { hasTestsFor, readTestsFor } from "../state/book.ts";
import { type Route, route, type ViewName } from "./router.ts";
import { testsTaken } from "./testsTaken.ts";
import { VIEWS, type View } from "./views.ts";

interface Loaded {
  readonly view: ViewName;
  readonly Component: ComponentType;
}

/** The view on the screen; null until the first is there. */
export const shownView = signal<Loaded | null>(null);
/** why the view that the address names is not on the screen, in words */
export const viewProblem = signal<string | null>(null);

let latest: Route | null = null;

function arrived(next: Route): void {
  viewProblem.value = null;
  route.value = next;
}

/** @returns the view's chunk; null where it could not be loaded, or not in time */
function loaded(view: View): Promise<Awaited<ReturnType<View["load"]>> | null> {
  const late = new Promise<null>((resolve) => setTimeout(resolve, PATIENCE, null));
  return Promise.race([view.load().catch(() => null), late]);
}

/** Reads the tests that a route takes. @returns brings them onto the screen; null where they can't be read, which is said */
async function testsFor(next: Route, view: View): Promise<(() => void) | null> {
  try {
    return await readTestsFor((book: Book) => testsTaken(next, book));
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (latest === next)
      viewProblem.value = `The tests that the view “${view.label}” takes could not be read. ${error.message}`;
    return null;
  }
}

/**
 * Brings the view of a route onto the screen. The view before stays, with its own route, until the new one's chunk and the
 * tests that it takes are there: no view ever reads an address that is meant for another, nor figures without their tests.
 */
export async function showRoute(next: Route): Promise<void> {
  latest = next;
  const view = VIEWS[next.view];
  const shown = shownView.peek();
  if (shown === null) route.value = next;
  const isHere = () => hasTestsFor((book) => testsTaken(next, book));
  if (shown?.view === next.view && isHere()) return batch(() => arrived(next));
  const module = await loaded(view);
  let bring = await testsFor(next, view);
  // A book that was read anew meanwhile has the tests of the view before.
  while (latest === next && bring !== null && !isHere()) bring = await testsFor(next, view);
  if (latest !== next || bring === null) return;
  if (module === null) {
    viewProblem.value = `The view “${view.label}” could not be loaded. Is the server still running?`;
    return;
  }
  batch(() => {
    arrived(next);
    bring();
    shownView.value = { view: next.view, Component: module.default };
  });
}
