import type { CollectionName } from "../model/collections.ts";
import type { StoredOf } from "../model/record.ts";
import type { InlinedTest, TestKind } from "../model/tests/index.ts";
import { inlined } from "./named.ts";

/** The bench book as the views and the resolver read it: every record of every collection. */
export type Book = { readonly [C in CollectionName]: readonly StoredOf<C>[] } & {
  /** answers whose tests are left out of this book, by the key that {@link oncePerBook} has them under; none in a whole book */
  readonly known?: ReadonlyMap<string, unknown>;
};

/** A test of one kind with what it names of the book described in its place. */
export type TestOf<K extends TestKind> = Extract<InlinedTest, { kind: K }>;
export interface StoredTest<K extends TestKind> {
  readonly id: string;
  readonly data: TestOf<K>;
}

/** @returns the record with that identifier, null where the book has none or none is named */
export function findById<T extends { readonly id: string }>(
  records: readonly T[],
  id: string | null | undefined,
): T | null {
  return records.find((record) => record.id === id) ?? null;
}

/** @returns the tests of one kind, in the book's order */
export function testsOf<K extends TestKind>(
  book: Pick<Book, "tests" | "instruments" | "plates">,
  kind: K,
): StoredTest<K>[] {
  return book.tests.flatMap((test) =>
    test.data.kind === kind ? [{ id: test.id, data: inlined(book, test.data) as TestOf<K> }] : [],
  );
}

const caches = new WeakMap<Book, Map<string, unknown>>();

/** @returns the value made once for this state of the bench, or known of it beforehand; a changed bench is a new object and starts anew */
export function oncePerBook<T>(book: Book, key: string, make: () => T): T {
  if (book.known?.has(key)) return book.known.get(key) as T;
  let cache = caches.get(book);
  if (!cache) {
    cache = new Map();
    caches.set(book, cache);
  }
  if (!cache.has(key)) cache.set(key, make());
  return cache.get(key) as T;
}
