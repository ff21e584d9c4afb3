import type { Book } from "../../../shared/book/book.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { TestKind } from "../../../shared/model/tests/index.ts";
import { counted } from "../../ui/count.ts";
import { KIND_WORDS } from "../../ui/kindWords.ts";

/** Tests of one kind that figures are based on. */
export interface TestRow {
  readonly kind: TestKind;
  /** "3 curve tests" */
  readonly count: string;
  /** "2026-03-01, 2026-03-04 and 2026-04-02" */
  readonly days: string;
}

/** So many days are named; of more, the first and the last. */
const NAMED = 4;

/** @returns the days of tests, each once, in order */
export function daysText(tests: readonly StoredOf<"tests">[]): string {
  const days = [...new Set(tests.map(({ data }) => data.date))].sort();
  return days.length > NAMED ? `${days[0]} to ${days[days.length - 1]}` : days.join(", ");
}

/** @returns the tests that a build's figures are based on, by kind, with their days */
export function testRows(book: Book, ids: readonly string[]): TestRow[] {
  const used = new Set(ids);
  const kinds = new Map<TestKind, StoredOf<"tests">[]>();
  for (const test of book.tests) {
    if (!used.has(test.id)) continue;
    kinds.set(test.data.kind, [...(kinds.get(test.data.kind) ?? []), test]);
  }
  return [...kinds].map(([kind, tests]) => ({
    kind,
    count: counted(tests.length, KIND_WORDS[kind]),
    days: daysText(tests),
  }));
}
