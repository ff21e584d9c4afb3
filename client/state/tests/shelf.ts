import { newestFirst } from "../../../shared/book/newestFirst.ts";
import { EVERY_TEST, type TestsAsked } from "../../../shared/book/testsAsked.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { keyOf } from "./address.ts";

type Test = StoredOf<"tests">;

/** The tests of the book that this page has read, and to which questions these are all. */
export class Shelf {
  readonly #tests = new Map<string, Test>();
  /** by its query, what is here whole */
  readonly #held = new Map<string, TestsAsked>();
  readonly #gone = new Set<string>();
  #listed: readonly Test[] | null = null;

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
  }

  /** A test was written. */
  keep(test: Test): void {
    this.#gone.delete(test.id);
    this.#hold(test);
  }

  /** A test was deleted, or struck out. */
  drop(id: string): void {
    this.#gone.add(id);
    this.#tests.delete(id);
    this.#listed = null;
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
  }
}
