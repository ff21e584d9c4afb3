import { loadDemo } from "../demo.ts";
import { openDatabase } from "../store/database.ts";
import { isLocked, LockedError } from "../store/patience.ts";
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
  readonly close?: () => void;
}

/** Reads the change first, so that the file is held no longer than writing it takes. */
function prepared({ file, change, at }: WholeChangeAsked): Prepared {
  if (change.kind === "empty") return { make: (store) => store.empty(at) };
  if (change.kind === "demo") return { make: (store) => loadDemo(store, at) };
  if (change.kind === "backup") {
    const { book, demo, close } = readBackup(file, change.name, at);
    return { make: (store) => store.load(book, demo, { at, replace: true, before: "restore" }), close };
  }
  const { book, demo, close } = archiveBook(piecesIn(change.path), requireConsistent);
  return { make: (store) => store.load(book, demo, { at, replace: change.replace }), close };
}

/**
 * Changes the book as a whole through a connection of its own, in one transaction; others read meanwhile, and wait to
 * write. Where another writes, this thread waits as the start does.
 *
 * @returns the name of the copy kept of what was there, null where nothing was
 * @throws {Refusal} {NotEmptyError} {LockedError}
 */
export function changeWhole(asked: WholeChangeAsked): string | null {
  const { make, close } = prepared(asked);
  try {
    return changed(asked.file, make);
  } catch (error) {
    throw isLocked(error) ? new LockedError() : error;
  } finally {
    close?.();
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
