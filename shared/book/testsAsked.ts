import type { BenchTest, TestKind } from "../model/tests/index.ts";
import type { Book } from "./book.ts";

/** The keys under which a test names what it was made with. */
export const NAMED_IN_TESTS = ["rotor", "motor", "pack", "skirt", "surface", "gear", "build"] as const;
export type NamedInTests = (typeof NAMED_IN_TESTS)[number];

/** Some of a book's tests: those of one kind, where one is said, that name every one of some records. Without either, all. */
export interface TestsAsked {
  readonly kind?: TestKind;
  /** by the key that names it, its identifier */
  readonly names?: Readonly<Partial<Record<NamedInTests, string>>>;
  /** the one of the newest day alone */
  readonly newest?: true;
  /** none of them, but what they come to, part by part */
  readonly fits?: true;
}

/** All tests of a book. */
export const EVERY_TEST: TestsAsked = {};
/** What all tests of a book come to, part by part, and how many there are of each. */
export const EVERY_FIT: TestsAsked = { fits: true };

/** @returns whether a test is among those asked for, or among which the newest is */
export function isAskedFor({ kind, names = {}, fits }: TestsAsked, data: BenchTest): boolean {
  if (fits) return false;
  if (kind !== undefined && data.kind !== kind) return false;
  const said = data as unknown as Readonly<Record<string, unknown>>;
  return Object.entries(names).every(([key, id]) => said[key] === id);
}

/** @returns a book's tests that are among any of those asked for, in the book's order */
export function testsAmong(tests: Book["tests"], asked: readonly TestsAsked[]): Book["tests"] {
  const ofAnyKind = asked.filter(({ kind }) => kind === undefined);
  const byKind = new Map<TestKind, TestsAsked[]>();
  for (const each of asked)
    if (each.kind !== undefined) byKind.set(each.kind, [...(byKind.get(each.kind) ?? []), each]);
  return tests.filter(({ data }) =>
    [...ofAnyKind, ...(byKind.get(data.kind) ?? [])].some((each) => isAskedFor(each, data)),
  );
}
