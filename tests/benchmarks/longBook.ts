import { Staged } from "#server/store/staged.ts";
import { openStore } from "#server/store/store.ts";
import { byCollection } from "#shared/model/collections.ts";
import type { Stored } from "#shared/model/record.ts";
import { demoBook } from "#tests/support/demoBook.ts";

/** What a book of many years holds, beside the demo's parts. */
export const LONG_BOOK = { tests: 100_000, builds: 1_000, states: 10_000 } as const;

const [TEST, BUILD] = ["demo-12-pull", "pane-crawler"];
const DAYS = 2000;
const TODAY = new Date("2026-03-01T08:00:00Z");

type Record = Stored<{ readonly [key: string]: unknown }>;

function sample(records: readonly Record[], id: string): Record["data"] {
  const found = records.find((record) => record.id === id);
  if (!found) throw new Error(`The demo has no ${id}.`);
  return found.data;
}

/** One of the demo's pull tests a hundred thousand times, under other names and days; one at a time, so that who measures isn't left with them. */
function* manyTests(data: Record["data"]): Generator<Record> {
  for (let i = 0; i < LONG_BOOK.tests; i++) {
    const at = new Date(Date.UTC(2020, 0, 1 + (i % DAYS))).toISOString();
    const titled = { ...data, title: `Test ${i}`, date: at.slice(0, 10) };
    yield { id: `t-${i}`, revision: 1, createdAt: at, updatedAt: at, data: titled };
  }
}

/** One of the demo's builds, many times, each as often corrected. */
function manyBuilds(data: Record["data"]): { records: Record[]; revisions: Record[] } {
  const at = TODAY.toISOString();
  const each = LONG_BOOK.states / LONG_BOOK.builds;
  const state = (i: number, revision: number): Record => {
    const named = { ...data, name: `Build ${i}, state ${revision}` };
    return { id: `build-${i}`, revision, createdAt: at, updatedAt: at, data: named };
  };
  const numbers = Array.from({ length: LONG_BOOK.builds }, (_, i) => i);
  return {
    records: numbers.map((i) => state(i, each + 1)),
    revisions: numbers.flatMap((i) => Array.from({ length: each }, (_, k) => state(i, k + 1))),
  };
}

/** Makes a data file that holds {@link LONG_BOOK}. */
export function fillLongBook(file: string): void {
  const demo = demoBook();
  const { records: builds, revisions } = manyBuilds(sample(demo.builds, BUILD));
  const tests = manyTests(sample(demo.tests, TEST));
  const book = Staged.of({
    records: { ...byCollection((name) => demo[name]), tests, builds },
    revisions: byCollection((name) => (name === "builds" ? revisions : [])),
    deletions: [],
    predictions: [],
  });
  const store = openStore(file, TODAY);
  store.load(book, true, { at: TODAY });
  store.close();
  book.close();
}
