import { signal } from "@preact/signals";
import type { CollectionName } from "../../../shared/model/collections.ts";

/** One thing that was done to a record: from one of its states to another. */
export interface Step {
  readonly collection: CollectionName;
  readonly id: string;
  /** what the record is called, as the screen says it */
  readonly name: string;
  /** the revision whose content it had; null: it was not there */
  readonly before: number | null;
  /** the revision whose content it has since; null: it was deleted */
  readonly after: number | null;
}

/** What was done on this page and can be undone, what was undone and can be done again, each the last at its end. */
export interface Stacks {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
  /** the revision that each record had when this page wrote it last, by collection and id; a later one is somebody else's */
  readonly present: Readonly<Record<string, number>>;
}

/** Another number where the shape changes: older stacks are then forgotten. */
const KEY = "gripcurve undo 1";
const MOST = 50;
const NOTHING: Stacks = { done: [], undone: [], present: {} };

const isStacks = (value: unknown): value is Stacks =>
  typeof value === "object" && value !== null && "done" in value && "undone" in value && "present" in value;

/** The browser's store of this page may be refused or damaged: nothing can be undone after a reload then. */
function readStacks(): Stacks {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
    return isStacks(kept) ? kept : NOTHING;
  } catch (error) {
    if (error instanceof DOMException || error instanceof SyntaxError || error instanceof ReferenceError)
      return NOTHING;
    throw error;
  }
}

export const stacks = signal<Stacks>(readStacks());

/** Keeps the stacks over a reload of the page, where the browser lets it. */
export function keepStacks(next: Stacks): void {
  stacks.value = next;
  try {
    sessionStorage.setItem(KEY, JSON.stringify(next));
  } catch (error) {
    if (!(error instanceof DOMException || error instanceof ReferenceError)) throw error;
  }
}

export const keyOf = ({ collection, id }: Pick<Step, "collection" | "id">): string => `${collection}/${id}`;

/** Notes something that was done; what was undone before can't be done again any more. */
export function noteStep(step: Step, present: number): void {
  const { done, present: known } = stacks.peek();
  keepStacks({
    done: [...done, step].slice(-MOST),
    undone: [],
    present: { ...known, [keyOf(step)]: present },
  });
}
