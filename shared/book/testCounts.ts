import type { TestKind } from "../model/tests/index.ts";
import { type Book, oncePerBook } from "./book.ts";
import type { NamedInTests } from "./testsAsked.ts";

/** How many tests there are of each kind; kinds without one left out. */
export type TestCounts = Readonly<Partial<Record<TestKind, number>>>;

/** @returns under which key a book has the number of tests that name a record */
export const countsKey = (named: NamedInTests, id: string): string => `tests ${named} ${id}`;

/** @returns how many tests name each record, by the key that names it and its identifier */
export function countedTests(tests: Book["tests"], names: readonly NamedInTests[]) {
  const counted = new Map<NamedInTests, Map<string, Partial<Record<TestKind, number>>>>(
    names.map((named) => [named, new Map()]),
  );
  for (const { data } of tests) {
    const said = data as unknown as Readonly<Record<string, unknown>>;
    for (const [named, byId] of counted) {
      const id = said[named];
      if (typeof id !== "string") continue;
      const counts = byId.get(id) ?? {};
      counts[data.kind] = (counts[data.kind] ?? 0) + 1;
      byId.set(id, counts);
    }
  }
  return counted as ReadonlyMap<NamedInTests, ReadonlyMap<string, TestCounts>>;
}

/** @returns how many tests name a record, by kind */
export function testCounts(book: Book, named: NamedInTests, id: string): TestCounts {
  return oncePerBook(book, countsKey(named, id), () => {
    const all = oncePerBook(book, `tests ${named}`, () => countedTests(book.tests, [named]));
    return all.get(named)?.get(id) ?? {};
  });
}

/** @returns how many they are, of some kinds or of all */
export function countOf(counts: TestCounts, kinds?: readonly TestKind[]): number {
  const wanted = kinds ?? (Object.keys(counts) as TestKind[]);
  return wanted.reduce((sum, kind) => sum + (counts[kind] ?? 0), 0);
}
