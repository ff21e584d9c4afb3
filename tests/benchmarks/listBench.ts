import { join } from "node:path";
import { fillLongBook, LONG_BOOK } from "./longBook.ts";
import { inFolder, startServer } from "./site.ts";
import { median, secondsOf } from "./timing.ts";

const ROUNDS = 20;
/** Rounds before the first that counts. */
const WARM_UP = 10;

/** Pages that a person asks for, and the fullest that there can be. */
const PAGES = {
  newest: "/tests",
  full: "/tests?limit=500",
  byKind: "/tests?kind=pull",
  byKindAndRotor: "/tests?kind=pull&rotor=swept-nine",
  byWordInAll: "/tests?q=Test",
  byWordInOne: "/tests?q=Test%2099999",
  builds: "/builds",
  states: "/builds/build-500/revisions",
} as const;
type PageName = keyof typeof PAGES;
const NAMES = Object.keys(PAGES) as PageName[];

async function read(address: string, page: string): Promise<void> {
  const response = await fetch(`${address}/api/v1${page}`);
  const { items } = (await response.json()) as { items: readonly unknown[] };
  if (!(response.ok && items.length > 0)) throw new Error(`The list ${page} is empty.`);
}

export interface ListTimes {
  readonly stored: number;
  /** until the server is ready on it [s] */
  readonly start: number;
  /** from the request to the page read, median of each kind of page [s] */
  readonly pages: Readonly<Record<PageName, number>>;
  /** the slowest of them [s] */
  readonly slowest: number;
}

/** In each round every page once, so that none is asked of a server and by a client that are colder than the others'. */
async function timedPages(address: string): Promise<Record<PageName, number>> {
  const times = Object.fromEntries(NAMES.map((name) => [name, [] as number[]]));
  for (let round = -WARM_UP; round < ROUNDS; round++)
    for (const name of NAMES) {
      const seconds = await secondsOf(() => read(address, PAGES[name]));
      if (round >= 0) times[name].push(seconds);
    }
  const medians = NAMES.map((name) => [name, median(times[name])] as const);
  return Object.fromEntries(medians) as Record<PageName, number>;
}

/** Pages of a list with a hundred thousand tests stored, asked of the built server. */
export function timedLists(): Promise<ListTimes> {
  return inFolder(async (folder) => {
    const file = join(folder, "bench.db");
    fillLongBook(file);
    const { address, readyAfter, stop } = await startServer(file);
    const pages = await timedPages(address);
    await stop();
    return { stored: LONG_BOOK.tests, start: readyAfter, pages, slowest: Math.max(...Object.values(pages)) };
  });
}
