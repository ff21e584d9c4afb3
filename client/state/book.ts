import { batch, signal } from "@preact/signals";
import type { Book } from "../../shared/book/book.ts";
import type { BookState, ChangeEvent } from "../../shared/model/api/book.ts";
import { COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import type { Stored, StoredOf } from "../../shared/model/record.ts";
import { withdrawnOf } from "../../shared/model/withdrawn.ts";
import { WRITTEN } from "../../shared/model/written.ts";
import type { ShownUnits } from "../../shared/units/showing.ts";
import { ApiError, api, type Limits } from "./api.ts";
import { forgetEntries } from "./kept/database.ts";
import { keptBook } from "./kept/keptBook.ts";
import { askedNow } from "./tests/askers.ts";
import { type Asker, fill, lackingOn, readNewest, readParts } from "./tests/read.ts";
import { Shelf, withTestsOf } from "./tests/shelf.ts";
import { withRecord } from "./withRecord.ts";

/**
 * The bench book as the screen knows it: all parts and builds, and of the tests those that what is shown takes, without
 * what is struck out. Null until it was read once.
 */
export const currentBook = signal<Book | null>(null);
/** When the book on the screen was read [ms since 1970], where this device kept it; null where it is the server's. */
export const bookAsOf = signal<number | null>(null);
export const loadState = signal<"loading" | "ready" | "error">("loading");
/** why the last reading failed, in words */
export const loadError = signal<string | null>(null);
/** The units in which the book shows each quantity; read where anything is shown. */
export const currentUnits = signal<ShownUnits>({});
/** true while the book holds the invented demo */
export const isDemo = signal(false);
/** How many tests the book holds, those struck out as well; null until that was read. */
export const testCount = signal<number | null>(null);
/** Another number whenever a test of the book was written, on the screen or not. */
export const testsWritten = signal(0);

/** A change of the units alone leaves the records as they are. A field that is typed in is left first: it writes out the unit that it was typed under. */
export function showIn(units: ShownUnits): void {
  if (JSON.stringify(units) === JSON.stringify(currentUnits.peek())) return;
  if ("document" in globalThis && document.activeElement instanceof HTMLElement)
    document.activeElement.blur();
  currentUnits.value = units;
}

async function readState(): Promise<void> {
  try {
    const { units, counts } = await api.get<BookState>("/bench");
    showIn(units);
    testCount.value = counts.tests;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    loadError.value = error.message;
  }
}

/** Works something out ahead of the screen, so that it doesn't hold it up there. */
type Ahead = (book: Book, signal: AbortSignal) => Promise<void>;

let ahead: Ahead = async () => {};

/** Says what is worked out before the first book comes onto the screen. */
export function workAhead(work: Ahead): void {
  ahead = work;
}

/** The book as it was written last, while tests that it takes are still to come; null while the screen shows it. */
let pending: Book | null = null;
let shelf = new Shelf();
/** of a reading under way: what is written meanwhile reaches it as well */
let nextShelf: Shelf | null = null;

/** @returns the book as it was written last */
const latest = (): Book | null => pending ?? currentBook.peek();

/** @returns the tests that this page holds, to be kept on the device */
export const shelfNow = (): Shelf => shelf;

/** Brings a book onto the screen, at once where the tests that it takes are here. */
function show(next: Book): void {
  const lacks = lackingOn(shelf, askedNow(next)).length > 0;
  pending = lacks ? next : null;
  if (lacks) void complete(next);
  else currentBook.value = next;
}

/** Reads what a book takes and the shelf lacks, then shows it, unless it was written again meanwhile. */
async function complete(book: Book): Promise<void> {
  const own = shelf;
  try {
    await fill(own, () => withTestsOf(book, own), askedNow);
    if (pending === book && own === shelf) show(withTestsOf(book, own));
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (pending !== book) return;
    loadError.value = error.message;
    loadState.value = "error";
  }
}

/** @returns whether the tests that something would take are here; true where no book is, which will be read with them */
export function hasTestsFor(asks: Asker): boolean {
  const book = latest();
  return book === null || lackingOn(shelf, asks(book)).length === 0;
}

/**
 * Reads the tests that something is about to take.
 *
 * @returns brings them onto the screen
 * @throws {ApiError}
 */
export async function readTestsFor(asks: Asker): Promise<() => void> {
  const [own, book] = [shelf, latest()];
  if (book && !hasTestsFor(asks)) await fill(own, () => withTestsOf(latest() ?? book, own), asks);
  return () => {
    const now = latest();
    if (now && own === shelf) show(withTestsOf(now, own));
  };
}

/** How long a server may take for the book until the kept one is shown meanwhile [ms]. */
const LATE = 4_000;

const NOT_KEPT =
  "This device hasn't kept the tests that this view takes. Views that were seen before open, and so does the Bench.";

/** Shows the book that this device kept, where there is none on the screen. @returns whether one is there now */
async function showKept(signal: AbortSignal): Promise<boolean> {
  const kept = latest() ? null : await keptBook();
  if (kept && !signal.aborted && !latest())
    batch(() => {
      shelf = kept.shelf;
      bookAsOf.value = kept.at;
      isDemo.value = kept.isDemo;
      testCount.value = kept.testCount;
      showIn(kept.units);
      const book = withTestsOf(kept.book, shelf);
      if (lackingOn(shelf, askedNow(book)).length === 0) currentBook.value = book;
      else pending = book;
    });
  return currentBook.peek() !== null;
}

/** HTTP 401, Unauthorized: this device was revoked, and must not show the book any more. */
const NOT_PAIRED = 401;

let reading = new AbortController();

const PARTS = COLLECTION_NAMES.filter((name) => name !== "tests");

/** Reads parts, builds and the tests that are taken. @returns null where the reading was given up */
async function readBook(onto: Shelf, signal: AbortSignal) {
  const marks = new Set<string | null>();
  const limits: Limits = { signal, heard: (headers) => marks.add(headers.get(WRITTEN)) };
  const [state, , ...lists] = await Promise.all([
    api.get<BookState>("/bench", { signal }),
    readNewest(onto, limits),
    ...PARTS.map((name) => readParts(name, limits)),
  ]);
  const parts = Object.fromEntries(PARTS.map((name, i) => [name, lists[i]]));
  let book = { ...parts, tests: onto.tests } as unknown as Book;
  const now = () => {
    book = withTestsOf(book, onto);
    return book;
  };
  await fill(onto, now, askedNow, limits);
  if (!signal.aborted && !currentBook.peek()) {
    showIn(state.units);
    await ahead(now(), signal);
  }
  // What is shown may be another view by now.
  await fill(onto, now, askedNow, limits);
  return signal.aborted ? null : { state, book: now(), marks };
}

function failed(error: unknown): ApiError {
  if (!(error instanceof ApiError)) throw error;
  if (error.status === NOT_PAIRED) forgetEntries();
  return error;
}

/** How the book stood when it was read last, as its lists said it; more than one where it was written meanwhile, none where it wasn't read. */
let readAt: ReadonlySet<string | null> = new Set();
let lastReading: Promise<void> = Promise.resolve();

/** Reads the book again; the old one stays on the screen until the new one is there. A later reading replaces one under way. */
export function reload(): Promise<void> {
  lastReading = readAnew();
  return lastReading;
}

/** @returns whether the whole book was read as it stood at a moment, and at no other; once no reading is under way */
export async function wasReadAt(written: string): Promise<boolean> {
  for (let reading: Promise<void> | null = null; reading !== lastReading; await reading)
    reading = lastReading;
  return readAt.size === 1 && readAt.has(written);
}

async function readAnew(): Promise<void> {
  reading.abort();
  reading = new AbortController();
  const { signal } = reading;
  loadState.value = "loading";
  const onto = new Shelf();
  nextShelf = onto;
  const late = setTimeout(() => void showKept(signal), LATE);
  try {
    const read = await readBook(onto, signal);
    if (!read) return;
    batch(() => {
      shelf = onto;
      nextShelf = null;
      readAt = read.marks;
      bookAsOf.value = null;
      isDemo.value = read.state.demo;
      testCount.value = read.state.counts.tests;
      testsWritten.value += 1;
      showIn(read.state.units);
      loadError.value = null;
      loadState.value = "ready";
      show(read.book);
    });
  } catch (error) {
    const { status, message } = failed(error);
    if (signal.aborted) return;
    const isShown = status === 0 && (await showKept(signal));
    if (signal.aborted) return;
    loadError.value = latest() && !isShown ? `${message} ${NOT_KEPT}` : message;
    loadState.value = isShown && bookAsOf.peek() !== null ? "ready" : "error";
  } finally {
    clearTimeout(late);
  }
}

/** @returns the shelf on the screen, and the one that is being filled */
const shelves = (): readonly Shelf[] => (nextShelf ? [shelf, nextShelf] : [shelf]);

function writeTest(write: (onto: Shelf) => void): void {
  for (const each of shelves()) write(each);
  batch(() => {
    testsWritten.value += 1;
    const book = latest();
    if (book) show(withTestsOf(book, shelf));
  });
}

function writePart(name: CollectionName, id: string, record: Stored<unknown> | null): void {
  for (const each of shelves()) each.noteChange(name);
  const book = latest();
  if (book) show(withTestsOf(withRecord(book, name, id, record), shelf));
}

/** Puts one record into the book at once, as the server answered it; a test that is struck out leaves it. */
export function keep(name: CollectionName, record: Stored<unknown>): void {
  if (name !== "tests") {
    writePart(name, record.id, record);
    return;
  }
  const test = record as StoredOf<"tests">;
  if (withdrawnOf(test.data) !== null) drop(name, test.id);
  else writeTest((onto) => onto.keep(test));
}

/** Takes one record out of the book on the screen. */
export function drop(name: CollectionName, id: string): void {
  if (name === "tests") writeTest((onto) => onto.drop(id));
  else writePart(name, id, null);
}

function knownRevision(book: Book, name: CollectionName, id: string): number | null {
  const list = book[name] as readonly Stored<unknown>[];
  return (name === "tests" ? shelf.get(id) : list.find((each) => each.id === id))?.revision ?? null;
}

/** Brings one change that the server tells of onto the screen. */
export async function apply(change: ChangeEvent): Promise<void> {
  const { collection, id } = change;
  const book = latest();
  if (change.change === "units") return readState();
  if (!collection || !id || !book) return reload();
  if (collection === "tests" && change.change !== "replaced") void readState();
  if (change.change === "deleted") return drop(collection, id);
  const known = knownRevision(book, collection, id);
  if (known !== null && change.revision !== null && known >= change.revision) return;
  try {
    const record = await api.get<Stored<unknown>>(`/${collection}/${encodeURIComponent(id)}`);
    keep(collection, record);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (error.status === 404) drop(collection, id);
    else loadError.value = error.message;
  }
}
