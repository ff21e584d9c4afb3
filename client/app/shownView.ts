import { batch, signal } from "@preact/signals";
import type { ComponentType } from "preact";
import { PATIENCE } from "../state/api.ts";
import { type Route, route, type ViewName } from "./router.ts";
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

/**
 * Brings the view of a route onto the screen. The view before stays, with its own route, until the new one's chunk is
 * there: no view ever reads an address that is meant for another.
 */
export async function showRoute(next: Route): Promise<void> {
  latest = next;
  const view = VIEWS[next.view];
  const shown = shownView.peek();
  if (shown === null) route.value = next;
  if (shown?.view === next.view) return batch(() => arrived(next));
  const module = await loaded(view);
  if (latest !== next) return;
  if (module === null) {
    viewProblem.value = `The view “${view.label}” could not be loaded. Is the server still running?`;
    return;
  }
  batch(() => {
    arrived(next);
    shownView.value = { view: next.view, Component: module.default };
  });
}
