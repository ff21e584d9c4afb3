import { loadDemo } from "../demo.ts";
import { openDatabase } from "../store/database.ts";
import { isLocked, LockedError } from "../store/patience.ts";
import type { Staged } from "../store/staged.ts";
import { Store } from "../store/store.ts";
import { requireConsistent } from "../store/wholeCheck.ts";
import { archiveBook } from "./archiveBook.ts";
import { readBackup } from "./backupBook.ts";
import { piecesIn } from "./piecesIn.ts";

/** A change to the book as a whole. */
export type WholeChange =
  | { readonly kind: "empty" }
  | { readonly kind: "demo" }
  | { readonly kind: "archive"; readonly path: string; readonly replace: boolean }
  /** a copy beside the data file takes the book's place */
  | { readonly kind: "backup"; readonly name: string };

export interface WholeChangeAsked {
  readonly file: string;
  readonly at: Date;
  readonly change: WholeChange;
}

interface Prepared {
  readonly make: (store: Store) => string | null;
  /** what it puts in, where that is a book that was read */
  readonly book?: Staged;
}

/** Reads the change first, so that the file is held no longer than writing it takes. */
function prepared({ file, change, at }: WholeChangeAsked): Prepared {
  if (change.kind === "empty") return { make: (store) => store.empty(at) };
  if (change.kind === "demo") return { make: (store) => loadDemo(store, at) };
  if (change.kind === "backup") {
    const { book, demo } = readBackup(file, change.name, at);
    return { make: (store) => store.load(book, demo, { at, replace: true, before: "restore" }), book };
  }
  const { book, demo } = archiveBook(piecesIn(change.path), requireConsistent);
  return { make: (store) => store.load(book, demo, { at, replace: change.replace }), book };
}

/**
 * Changes the book as a whole through a connection of its own, in one transaction; others read meanwhile, and wait to
 * write. Where another writes, this thread waits as the start does.
 *
 * @returns the name of the copy kept of what was there, null where nothing was
 * @throws {Refusal} {NotEmptyError} {LockedError}
 */
export function changeWhole(asked: WholeChangeAsked): string | null {
  const { make, book } = prepared(asked);
  try {
    return changed(asked.file, make);
  } catch (error) {
    throw isLocked(error) ? new LockedError() : error;
  } finally {
    book?.close();
  }
}

function changed(file: string, make: Prepared["make"]): string | null {
  const store = new Store(openDatabase(file));
  try {
    return make(store);
  } finally {
    store.close();
  }
}
