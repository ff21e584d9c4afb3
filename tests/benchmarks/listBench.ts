import { join } from "node:path";
import type { Data } from "#server/store/rows.ts";
import { openStore } from "#server/store/store.ts";
import { byCollection } from "#shared/model/collections.ts";
import type { Stored } from "#shared/model/record.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { inFolder, startServer } from "./site.ts";
import { median, secondsOf } from "./timing.ts";

const STORED_TESTS = 100_000;
const ROUNDS = 20;
const SEED = "demo-12-pull";
const DAYS = 2000;
const TODAY = new Date("2026-03-01T08:00:00Z");

/** Pages that a person asks for, and the fullest that there can be. */
const PAGES = {
  newest: "/tests",
  full: "/tests?limit=500",
  byKind: "/tests?kind=pull",
  byKindAndRotor: "/tests?kind=pull&rotor=swept-nine",
  byWordInAll: "/tests?q=Test",
  byWordInOne: "/tests?q=Test%2099999",
} as const;
type PageName = keyof typeof PAGES;
const NAMES = Object.keys(PAGES) as PageName[];

/** One of the demo's pull tests a hundred thousand times, under other names and days. */
function manyTests(seed: Data): Stored<Data>[] {
  return Array.from({ length: STORED_TESTS }, (_, i) => {
    const at = new Date(Date.UTC(2020, 0, 1 + (i % DAYS))).toISOString();
    const data = { ...seed, title: `Test ${i}`, date: at.slice(0, 10) };
    return { id: `t-${i}`, revision: 1, createdAt: at, updatedAt: at, data };
  });
}

function fill(file: string): void {
  const demo = demoBook();
  const seed = demo.tests.find(({ id }) => id === SEED);
  if (!seed) throw new Error(`The demo has no test ${SEED}.`);
  const records = { ...byCollection((name) => demo[name]), tests: manyTests(seed.data), builds: [] };
  const store = openStore(file, TODAY);
  store.load({ records, revisions: byCollection(() => []), deletions: [], predictions: [] }, true, {
    at: TODAY,
  });
  store.close();
}

async function read(address: string, page: string): Promise<void> {
  const response = await fetch(`${address}/api/v1${page}`);
  const { items } = (await response.json()) as { items: readonly unknown[] };
  if (!(response.ok && items.length > 0)) throw new Error(`The list ${page} is empty.`);
}

export interface ListTimes {
  readonly stored: number;
  /** from the request to the page read, median of each kind of page [s] */
  readonly pages: Readonly<Record<PageName, number>>;
  /** the slowest of them [s] */
  readonly slowest: number;
}

/** Pages of a list with a hundred thousand tests stored, asked of the built server. */
export function timedLists(): Promise<ListTimes> {
  return inFolder(async (folder) => {
    const file = join(folder, "bench.db");
    fill(file);
    const { address, stop } = await startServer(file);
    const pages = {} as Record<PageName, number>;
    for (const name of NAMES) {
      const times: number[] = [];
      await read(address, PAGES[name]);
      for (let i = 0; i < ROUNDS; i++) times.push(await secondsOf(() => read(address, PAGES[name])));
      pages[name] = median(times);
    }
    await stop();
    return { stored: STORED_TESTS, pages, slowest: Math.max(...Object.values(pages)) };
  });
}
