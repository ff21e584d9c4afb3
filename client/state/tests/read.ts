import { signal } from "@preact/signals";
import type { Book } from "../../../shared/book/book.ts";
import type { BookFits } from "../../../shared/book/bookFits.ts";
import { EVERY_TEST, type TestsAsked } from "../../../shared/book/testsAsked.ts";
import type { CollectionName } from "../../../shared/model/collections.ts";
import type { Stored, StoredOf } from "../../../shared/model/record.ts";
import { ApiError, api, type Limits } from "../api.ts";
import { keyOf, pathOfTests, queryOf } from "./address.ts";
import type { Shelf } from "./shelf.ts";

interface Page {
  readonly items: readonly Stored<unknown>[];
  readonly next: string | null;
}

const PAGE_SIZE = 500;
/** A book of so many tests is read whole, in one request; of a larger one so many travel for nothing. Judgement. */
const NEWEST = 200;

async function readPage(path: string, name: CollectionName, limits?: Limits): Promise<Page> {
  const page = await api.get<Page>(path, limits);
  if (!Array.isArray(page.items))
    throw new ApiError(200, "unexpected", `The answer to /${name} is no list of records.`);
  return page;
}

/** @returns every record of a collection of parts or builds */
export async function readParts(name: CollectionName, limits: Limits): Promise<Stored<unknown>[]> {
  const records: Stored<unknown>[] = [];
  let cursor: string | null = null;
  do {
    const query: string = cursor === null ? "" : `&cursor=${encodeURIComponent(cursor)}`;
    const page: Page = await readPage(`/${name}?limit=${PAGE_SIZE}${query}`, name, limits);
    records.push(...page.items);
    cursor = page.next;
  } while (cursor !== null);
  return records;
}

/** Reads the newest tests: forms are set up as the last one was. Where these are all that the book has, none is asked for again. */
export async function readNewest(onto: Shelf, limits: Limits): Promise<void> {
  const { items, next } = await readPage(pathOfTests("", NEWEST, null), "tests", limits);
  const tests = items as StoredOf<"tests">[];
  onto.put(tests);
  for (const { data } of tests) onto.hold({ kind: data.kind, newest: true });
  if (next === null) onto.hold(EVERY_TEST);
}

/** So long the server may take to go over all tests of a long book [ms]. */
const FITS_PATIENCE = 180_000;

/** Reads what all tests come to; what was written meanwhile may not be in it, and it is asked for again. */
async function readFits(onto: Shelf, limits?: Limits): Promise<void> {
  const { changes } = onto;
  const fits = await api.get<BookFits>("/fits", { ...limits, patience: FITS_PATIENCE });
  if (onto.changes === changes) onto.holdFits(fits);
}

async function readAsked(onto: Shelf, asked: TestsAsked, limits?: Limits): Promise<void> {
  if (asked.fits) return readFits(onto, limits);
  const limit = asked.newest ? 1 : PAGE_SIZE;
  let cursor: string | null = null;
  do {
    const page: Page = await readPage(pathOfTests(queryOf(asked), limit, cursor), "tests", limits);
    onto.put(page.items as StoredOf<"tests">[]);
    cursor = asked.newest ? null : page.next;
  } while (cursor !== null);
  onto.hold(asked);
}

/** Says which tests something on the screen takes, as far as the tests of the given book say it. */
export type Asker = (book: Book) => readonly TestsAsked[];

/** @returns what is asked for and not here, each once; where all is asked for, that alone */
export function lackingOn(shelf: Shelf, asked: readonly TestsAsked[]): readonly TestsAsked[] {
  const lacking = new Map(asked.flatMap((each) => (shelf.holds(each) ? [] : [[keyOf(each), each] as const])));
  const all = lacking.get(keyOf(EVERY_TEST));
  return all ? [all] : [...lacking.values()];
}

/** How many are reading tests just now. */
export const testsComing = signal(0);

/**
 * Reads tests until all that are asked for are here: what was read may ask for more.
 *
 * @param bookNow - with the tests that are here
 * @throws {ApiError}
 */
export async function fill(onto: Shelf, bookNow: () => Book, asks: Asker, limits?: Limits): Promise<void> {
  for (;;) {
    const lacking = lackingOn(onto, asks(bookNow()));
    if (lacking.length === 0) return;
    testsComing.value++;
    try {
      await Promise.all(lacking.map((asked) => readAsked(onto, asked, limits)));
    } finally {
      testsComing.value--;
    }
  }
}
