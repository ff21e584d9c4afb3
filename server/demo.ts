/// <reference types="vite/client" />
import { z } from "zod";
import { byCollection, type CollectionName } from "../shared/model/collections.ts";
import { identifier } from "../shared/model/scalar.ts";
import { COLLECTIONS } from "../shared/model/schemas.ts";
import type { Data } from "./store/rows.ts";
import { Staged, type WholeBook } from "./store/staged.ts";
import type { Store } from "./store/store.ts";
import { requireConsistent } from "./store/wholeCheck.ts";

/** The demo's files, one a collection, each a list of { id, data }; they travel inside the built bundle. */
const FILES = import.meta.glob<unknown>("../seed-data/*.json", { import: "default", eager: true });

interface Seed {
  readonly id: string;
  readonly data: Data;
}

function seedsOf(name: CollectionName): readonly Seed[] {
  const data: z.ZodType<Data> = COLLECTIONS[name];
  const file = `../seed-data/${name}.json`;
  return z.array(z.strictObject({ id: identifier(), data })).parse(FILES[file] ?? []);
}

/**
 * @param at when it is loaded
 * @returns the invented demo, each record checked like any other input, as if its records had been entered one after
 *   another, a millisecond apart, the last of each collection at that moment: lists keep the order of the files
 */
function demoBook(at: Date): WholeBook {
  const records = byCollection((name) =>
    seedsOf(name).map((seed, index, all) => {
      const time = new Date(at.getTime() + 1 + index - all.length).toISOString();
      return { ...seed, revision: 1, createdAt: time, updatedAt: time };
    }),
  );
  return { records, revisions: byCollection(() => []), deletions: [], predictions: [] };
}

function checkedDemo(at: Date): Staged {
  const book = Staged.of(demoBook(at));
  requireConsistent(book);
  return book;
}

/** @returns the name of the copy kept of what was there @throws {NotEmptyError} on a book that holds records */
export function loadDemo(store: Store, at: Date): string | null {
  const book = checkedDemo(at);
  try {
    return store.load(book, true, { at });
  } finally {
    book.close();
  }
}

/** Loads the demo at the very first start of a data file; never again by itself. */
export function loadDemoOnFirstStart(store: Store, at: Date): void {
  store.firstStart(() => checkedDemo(at));
}
