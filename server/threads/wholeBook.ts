import { archive } from "../../shared/model/api/book.ts";
import { loadDemo } from "../demo.ts";
import { readJson } from "../json.ts";
import { parsed } from "../routes/route.ts";
import { openDatabase } from "../store/database.ts";
import { isLocked, LockedError } from "../store/patience.ts";
import { Store } from "../store/store.ts";
import type { WholeBook } from "../store/wholeBook.ts";
import { requireConsistent } from "../store/wholeCheck.ts";

/** A change to the book as a whole. */
export type WholeChange =
  | { readonly kind: "empty" }
  | { readonly kind: "demo" }
  | { readonly kind: "archive"; readonly body: Uint8Array; readonly replace: boolean };

export interface WholeChangeAsked {
  readonly file: string;
  readonly at: Date;
  readonly change: WholeChange;
}

/** Reads the change first, so that the file is held no longer than writing it takes. */
function prepared(change: WholeChange, at: Date): (store: Store) => string | null {
  if (change.kind === "empty") return (store) => store.empty(at);
  if (change.kind === "demo") return (store) => loadDemo(store, at);
  const { records, revisions, deletions, predictions, demo } = parsed(archive, readJson(change.body));
  const book = { records, revisions, deletions, predictions } as WholeBook;
  requireConsistent(book);
  return (store) => store.load(book, demo, { at, replace: change.replace });
}

/**
 * Changes the book as a whole through a connection of its own, in one transaction; others read meanwhile, and wait to
 * write. Where another writes, this thread waits as the start does.
 *
 * @returns the name of the copy kept of what was there, null where nothing was
 * @throws {Refusal} {NotEmptyError} {LockedError}
 */
export function changeWhole({ file, at, change }: WholeChangeAsked): string | null {
  const make = prepared(change, at);
  const store = new Store(openDatabase(file));
  try {
    return make(store);
  } catch (error) {
    throw isLocked(error) ? new LockedError() : error;
  } finally {
    store.close();
  }
}
