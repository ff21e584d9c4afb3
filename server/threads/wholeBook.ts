import { loadDemo } from "../demo.ts";
import { openDatabase } from "../store/database.ts";
import { isLocked, LockedError } from "../store/patience.ts";
import { Store } from "../store/store.ts";
import { checkedArchive, readBackup } from "./backupBook.ts";

/** A change to the book as a whole. */
export type WholeChange =
  | { readonly kind: "empty" }
  | { readonly kind: "demo" }
  | { readonly kind: "archive"; readonly body: Uint8Array; readonly replace: boolean }
  /** a copy beside the data file takes the book's place */
  | { readonly kind: "backup"; readonly name: string };

export interface WholeChangeAsked {
  readonly file: string;
  readonly at: Date;
  readonly change: WholeChange;
}

/** Reads the change first, so that the file is held no longer than writing it takes. */
function prepared({ file, change, at }: WholeChangeAsked): (store: Store) => string | null {
  if (change.kind === "empty") return (store) => store.empty(at);
  if (change.kind === "demo") return (store) => loadDemo(store, at);
  if (change.kind === "backup") {
    const { book, demo } = readBackup(file, change.name, at);
    return (store) => store.load(book, demo, { at, replace: true, before: "restore" });
  }
  const { book, demo } = checkedArchive(change.body);
  return (store) => store.load(book, demo, { at, replace: change.replace });
}

/**
 * Changes the book as a whole through a connection of its own, in one transaction; others read meanwhile, and wait to
 * write. Where another writes, this thread waits as the start does.
 *
 * @returns the name of the copy kept of what was there, null where nothing was
 * @throws {Refusal} {NotEmptyError} {LockedError}
 */
export function changeWhole(asked: WholeChangeAsked): string | null {
  const make = prepared(asked);
  const store = new Store(openDatabase(asked.file));
  try {
    return make(store);
  } catch (error) {
    throw isLocked(error) ? new LockedError() : error;
  } finally {
    store.close();
  }
}
