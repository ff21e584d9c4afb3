import type { Book } from "../../../shared/book/book.ts";
import { type BookFits, knownBy } from "../../../shared/book/bookFits.ts";
import { newestFirst } from "../../../shared/book/newestFirst.ts";
import { EVERY_FIT, EVERY_TEST, type TestsAsked } from "../../../shared/book/testsAsked.ts";
import { type Rig, testsOfRigs } from "../../../shared/book/testsOfRigs.ts";
import type { CollectionName } from "../../../shared/model/collections.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { keyOf } from "./address.ts";

type Test = StoredOf<"tests">;
type Known = ReadonlyMap<string, unknown>;

/** What the tests come to changes with a record of these. */
const BEHIND_FITS: readonly CollectionName[] = [
  "tests",
  "rotors",
  "motors",
  "packs",
  "skirts",
  "surfaces",
  "instruments",
  "plates",
];

/** The tests of the book that this page has read, to which questions these are all, and what all of them come to where that was asked. */
export class Shelf {
  readonly #tests = new Map<string, Test>();
  /** by its query, what is here whole */
  readonly #held = new Map<string, TestsAsked>();
  readonly #gone = new Set<string>();
  #listed: readonly Test[] | null = null;
  #fits: BookFits | null = null;
  #known: Known | null = null;
  #changes = 0;

  /** @returns whether all tests that are asked for are here */
  holds(asked: TestsAsked): boolean {
    return this.#held.has(keyOf(EVERY_TEST)) || this.#held.has(keyOf(asked));
  }

  /** @returns what is here whole */
  get held(): readonly TestsAsked[] {
    return [...this.#held.values()];
  }

  /** Puts a page of tests here; what came meanwhile by itself is newer. */
  put(tests: readonly Test[]): void {
    for (const test of tests) if (!this.#gone.has(test.id)) this.#hold(test);
  }

  /** All tests that are asked for are here now. */
  hold(asked: TestsAsked): void {
    this.#held.set(keyOf(asked), asked);
    this.#known = null;
  }

  /** @returns another number whenever something was written that the fits rest on */
  get changes(): number {
    return this.#changes;
  }

  /** @returns what all tests come to; null where it wasn't read since the last change */
  get fits(): BookFits | null {
    return this.#fits;
  }

  /** Puts what all tests come to here, as it is now. */
  holdFits(fits: BookFits): void {
    this.#fits = fits;
    this.hold(EVERY_FIT);
  }

  /** A record was written: what all tests come to may be another. */
  noteChange(name: CollectionName): void {
    if (!BEHIND_FITS.includes(name)) return;
    this.#changes++;
    this.#fits = null;
    this.#held.delete(keyOf(EVERY_FIT));
    this.#known = null;
  }

  /** @returns what is known of parts whose tests aren't here; null where that wasn't read, or all are; the same until something changes */
  get known(): Known | null {
    if (!this.#fits || this.#held.has(keyOf(EVERY_TEST))) return null;
    const tests = this.tests.map(({ data }) => data);
    const isHere = (rig: Rig) => testsOfRigs([rig], []).every((asked) => this.holds(asked));
    const isAllHere = (rig: Rig) =>
      isHere(rig) && testsOfRigs([rig], tests).every((asked) => this.holds(asked));
    this.#known ??= knownBy(this.#fits, isAllHere);
    return this.#known;
  }

  /** A test was written. */
  keep(test: Test): void {
    this.#gone.delete(test.id);
    this.#hold(test);
    this.noteChange("tests");
  }

  /** A test was deleted, or struck out. */
  drop(id: string): void {
    this.#gone.add(id);
    this.#tests.delete(id);
    this.#listed = null;
    this.noteChange("tests");
  }

  get(id: string): Test | null {
    return this.#tests.get(id) ?? null;
  }

  /** @returns the tests, the newest day first, so that what is worked out of them doesn't depend on when they were read; the same list until one changes */
  get tests(): readonly Test[] {
    this.#listed ??= newestFirst([...this.#tests.values()]);
    return this.#listed;
  }

  #hold(test: Test): void {
    const known = this.#tests.get(test.id);
    if (known && known.revision > test.revision) return;
    this.#tests.set(test.id, test);
    this.#listed = null;
    this.#known = null;
  }
}

/** @returns a book with the tests that a page holds, and what is known of those that it doesn't; the same object where it has them */
export function withTestsOf(book: Book, { tests, known }: Shelf): Book {
  if (book.tests === tests && (book.known ?? null) === known) return book;
  return { ...book, tests, known: known ?? undefined };
}
