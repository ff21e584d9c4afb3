import { signal } from "@preact/signals";

/** What is explained at the moment, and where its word stands on the screen [px]. */
export interface Explaining {
  readonly of: Element;
  readonly text: string;
  /** it was asked for by a click or a tap, and stays until something else is */
  readonly pinned: boolean;
}

export const explaining = signal<Explaining | null>(null);

/** The pointer may cross from the word to its explanation in this time [ms]. */
const CROSSING = 180;

let leaving: ReturnType<typeof setTimeout> | undefined;

/** Shows what a word means beside it. */
export function explain(of: Element, text: string, pinned = false): void {
  clearTimeout(leaving);
  explaining.value = { of, text, pinned };
}

/** Keeps the explanation while the pointer is over it. */
export function stay(): void {
  clearTimeout(leaving);
}

/** Takes the explanation away: at once, or once the pointer had time to cross to it. */
export function explainNoMore(at: "once" | "soon" = "once"): void {
  clearTimeout(leaving);
  if (at === "once") explaining.value = null;
  else if (!explaining.peek()?.pinned) leaving = setTimeout(() => explainNoMore(), CROSSING);
}
