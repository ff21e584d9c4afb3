import type { Book } from "../../../../shared/book/book.ts";
import { countOf, testCounts } from "../../../../shared/book/testCounts.ts";
import type { NamedInTests } from "../../../../shared/book/testsAsked.ts";
import type { StoredOf } from "../../../../shared/model/record.ts";

/** By which field a test or a build names a part of a collection. */
const FIELDS: Readonly<Record<string, NamedInTests>> = {
  rotors: "rotor",
  motors: "motor",
  packs: "pack",
  skirts: "skirt",
  surfaces: "surface",
  gears: "gear",
};

/** @returns the field by which a test or a build names a part of a collection: "rotor"; undefined for what is no part of a build */
export const partKeyOf = (collection: string): NamedInTests | undefined => FIELDS[collection];

/** In which tests and builds a part stands. */
export interface Uses {
  /** the newest first */
  readonly tests: readonly StoredOf<"tests">[];
  readonly builds: readonly StoredOf<"builds">[];
}

/** @returns tests and builds that name a part; null for what is no part of a build */
export function usesOf(
  { tests, builds }: Pick<Book, "tests" | "builds">,
  collection: string,
  id: string,
): Uses | null {
  const field = partKeyOf(collection);
  if (field === undefined) return null;
  const names = ({ data }: { readonly data: object }) =>
    (data as Readonly<Record<string, unknown>>)[field] === id;
  const newest = (a: StoredOf<"tests">, b: StoredOf<"tests">) => b.data.date.localeCompare(a.data.date);
  return { tests: tests.filter(names).sort(newest), builds: builds.filter(names) };
}

/** In how many tests and builds a part stands. */
export interface UseCounts {
  readonly tests: number;
  readonly builds: number;
}

/** @returns how many tests and builds name a part; null for what is no part of a build */
export function countedUses(book: Book, collection: string, id: string): UseCounts | null {
  const field = partKeyOf(collection);
  if (field === undefined) return null;
  const builds = book.builds.filter(({ data }) => (data as Readonly<Record<string, unknown>>)[field] === id);
  return { tests: countOf(testCounts(book, field, id)), builds: builds.length };
}
