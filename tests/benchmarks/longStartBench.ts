import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { chromium } from "playwright-core";
import { Staged } from "#server/store/staged.ts";
import { openStore } from "#server/store/store.ts";
import { byCollection } from "#shared/model/collections.ts";
import { findChromium } from "#tests/browser/support/chromium.ts";
import { crowdOfParts, crowdOfTests } from "#tests/support/crowdedBook.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { LONG_BOOK } from "./longBook.ts";
import { inFolder, startServer } from "./site.ts";
import { watchedNetwork } from "./stillness.ts";
import { median } from "./timing.ts";

/** Parts of so many other makers stand beside the demo's, and share the tests. */
const GROUPS = 50;
const TIMES = 5;
const MILLISECONDS = 1000;
/** So long a page may take [ms]. */
const PATIENCE = 300_000;
const TODAY = new Date("2026-03-01T08:00:00Z");

/** What a page asks of the server for the book until nothing more is asked for. */
interface Read {
  readonly requests: number;
  readonly tests: number;
  /** as JSON [byte] */
  readonly bytes: number;
  /** from the start of the navigation until it is there, the median of a few visits [s] */
  readonly there: number;
}

/** By its view, where it is shown and what shows that it is there. */
const OVER_ALL = {
  parts: ["/parts", "main .part-row"],
  curves: ["/curves", "main .curves-picture svg"],
} as const;

type OverAll = keyof typeof OVER_ALL;

/** What opening a view reads. */
export interface LongStart {
  readonly stored: number;
  readonly match: Read;
  readonly bench: Read;
  /** of the views that go over all parts */
  readonly overAll: Readonly<Record<OverAll, Read>>;
  /** the same of the demo by itself */
  readonly demoMatch: Read;
  readonly demoBench: Read;
}

/** Makes a data file with the demo and very many tests of other parts. */
export function fillCrowdedBook(file: string): void {
  const demo = demoBook();
  const parts = crowdOfParts(demo, { groups: GROUPS });
  function* tests() {
    yield* demo.tests;
    yield* crowdOfTests(demo, { groups: GROUPS, tests: LONG_BOOK.tests });
  }
  const book = Staged.of({
    records: { ...byCollection((name) => parts[name]), tests: tests() },
    revisions: byCollection(() => []),
    deletions: [],
    predictions: [],
  });
  const store = openStore(file, TODAY);
  store.load(book, true, { at: TODAY });
  store.close();
  book.close();
}

async function visit(browser: Browser, address: string, path: string, there: string): Promise<Read> {
  const context = await browser.newContext({ baseURL: address, serviceWorkers: "block" });
  const page: Page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  const bodies: Promise<string>[] = [];
  page.on("response", (response) => {
    if (/\/api\/v1\/(?!events)/.test(response.url())) bodies.push(response.text());
  });
  const still = watchedNetwork(page);
  const start = performance.now();
  await page.goto(path);
  await page.locator(there).first().waitFor();
  const seconds = (performance.now() - start) / MILLISECONDS;
  await still();
  const texts = await Promise.all(bodies);
  await context.close();
  const tests = texts.map((text) => text.match(/"kind":"[a-z-]+","title"/g)?.length ?? 0);
  return {
    requests: texts.length,
    tests: tests.reduce((sum, count) => sum + count, 0),
    bytes: texts.reduce((sum, text) => sum + Buffer.byteLength(text), 0),
    there: seconds,
  };
}

async function visits(browser: Browser, address: string, path: string, there: string): Promise<Read> {
  const all: Read[] = [];
  for (let i = 0; i < TIMES; i++) all.push(await visit(browser, address, path, there));
  return { ...all[all.length - 1], there: median(all.map((each) => each.there)) };
}

const MATCH = ["/match/pane-crawler", "main .verdict-band h1"] as const;
const BENCH = ["/bench", "main .bench-test"] as const;

async function both(browser: Browser, file: string) {
  const { address, stop } = await startServer(file);
  const match = await visits(browser, address, ...MATCH);
  const bench = await visits(browser, address, ...BENCH);
  await stop();
  return { match, bench };
}

async function viewsOverAll(browser: Browser, file: string): Promise<LongStart["overAll"]> {
  const { address, stop } = await startServer(file);
  const read = {} as Record<OverAll, Read>;
  for (const view of Object.keys(OVER_ALL) as OverAll[])
    read[view] = await visits(browser, address, OVER_ALL[view][0], OVER_ALL[view][1]);
  await stop();
  return read;
}

/** What the page reads of a book of a hundred thousand tests to show the first verdict, and the first list. */
export function timedLongStart(): Promise<LongStart> {
  return inFolder(async (folder) => {
    const file = join(folder, "long.db");
    fillCrowdedBook(file);
    const browser = await chromium.launch({ executablePath: findChromium(), args: ["--no-sandbox"] });
    const demo = await both(browser, join(folder, "demo.db"));
    const long = await both(browser, file);
    const overAll = await viewsOverAll(browser, file);
    await browser.close();
    return { stored: LONG_BOOK.tests, ...long, overAll, demoMatch: demo.match, demoBench: demo.bench };
  });
}
