import { batch, signal } from "@preact/signals";
import type { Book } from "../../shared/book/book.ts";
import type { BookState, ChangeEvent } from "../../shared/model/api/book.ts";
import { COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import { withdrawnOf } from "../../shared/model/withdrawn.ts";
import type { ShownUnits } from "../../shared/units/showing.ts";
import { ApiError, api } from "./api.ts";
import { forgetEntries } from "./kept/database.ts";
import { keptBook } from "./kept/keptBook.ts";

interface Page {
  readonly items: readonly Stored<unknown>[];
  readonly next: string | null;
}

const PAGE_SIZE = 500;

/** The whole bench book as the screen knows it, without what is struck out; null until it was read once. */
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

/** A test that is struck out stays in the book, and figures are based on a book without it. */
const IN_FORCE: Readonly<Partial<Record<CollectionName, string>>> = { tests: "&struckOut=false" };

async function readAll(name: CollectionName, signal: AbortSignal): Promise<Stored<unknown>[]> {
  const records: Stored<unknown>[] = [];
  let cursor: string | null = null;
  do {
    const query: string = cursor === null ? "" : `&cursor=${encodeURIComponent(cursor)}`;
    const page: Page = await api.get<Page>(`/${name}?limit=${PAGE_SIZE}${IN_FORCE[name] ?? ""}${query}`, {
      signal,
    });
    if (!Array.isArray(page.items))
      throw new ApiError(200, "unexpected", `The answer to /${name} is no list of records.`);
    records.push(...page.items);
    cursor = page.next;
  } while (cursor !== null);
  return records;
}

/** A change of the units alone leaves the records as they are. */
export function showIn(units: ShownUnits): void {
  if (JSON.stringify(units) !== JSON.stringify(currentUnits.peek())) currentUnits.value = units;
}

async function readUnits(): Promise<void> {
  try {
    showIn((await api.get<BookState>("/bench")).units);
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

/** How long a server may take for the book until the kept one is shown meanwhile [ms]. */
const LATE = 4_000;

/** Shows the book that this device kept, where there is none on the screen. @returns whether one is there now */
async function showKept(signal: AbortSignal): Promise<boolean> {
  const kept = currentBook.peek() ? null : await keptBook();
  if (kept && !signal.aborted && !currentBook.peek())
    batch(() => {
      bookAsOf.value = kept.at;
      currentBook.value = kept.book;
      isDemo.value = kept.isDemo;
      showIn(kept.units);
    });
  return currentBook.peek() !== null;
}

/** HTTP 401, Unauthorized: this device was revoked, and must not show the book any more. */
const NOT_PAIRED = 401;

let reading = new AbortController();

/** Reads the whole book again; the old one stays on the screen until the new one is there. A later reading replaces one under way. */
export async function reload(): Promise<void> {
  reading.abort();
  reading = new AbortController();
  const { signal } = reading;
  loadState.value = "loading";
  const late = setTimeout(() => void showKept(signal), LATE);
  try {
    const [state, ...lists] = await Promise.all([
      api.get<BookState>("/bench", { signal }),
      ...COLLECTION_NAMES.map((name) => readAll(name, signal)),
    ]);
    if (signal.aborted) return;
    const read = Object.fromEntries(COLLECTION_NAMES.map((name, i) => [name, lists[i]])) as unknown as Book;
    if (!currentBook.peek()) await ahead(read, signal);
    if (signal.aborted) return;
    batch(() => {
      bookAsOf.value = null;
      currentBook.value = read;
      isDemo.value = state.demo;
      showIn(state.units);
      loadError.value = null;
      loadState.value = "ready";
    });
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (signal.aborted) return;
    if (error.status === NOT_PAIRED) forgetEntries();
    const isShown = error.status === 0 && (await showKept(signal));
    if (signal.aborted) return;
    loadError.value = error.message;
    loadState.value = isShown && bookAsOf.peek() !== null ? "ready" : "error";
  } finally {
    clearTimeout(late);
  }
}

function withRecord(book: Book, name: CollectionName, id: string, record: Stored<unknown> | null): Book {
  const list = book[name] as readonly Stored<unknown>[];
  const at = list.findIndex((each) => each.id === id);
  const next = list.filter((each) => each.id !== id);
  if (record) next.splice(at < 0 ? next.length : at, 0, record);
  return { ...book, [name]: next };
}

const isStruckOut = (name: CollectionName, { data }: Stored<unknown>): boolean =>
  name === "tests" && withdrawnOf(data as object) !== null;

/** Puts one record into the book at once, as the server answered it; a test that is struck out leaves it. */
export function keep(name: CollectionName, record: Stored<unknown>): void {
  if (isStruckOut(name, record)) drop(name, record.id);
  else if (currentBook.value) currentBook.value = withRecord(currentBook.value, name, record.id, record);
}

/** Takes one record out of the book on the screen. */
export function drop(name: CollectionName, id: string): void {
  if (currentBook.value) currentBook.value = withRecord(currentBook.value, name, id, null);
}

/** Brings one change that the server tells of onto the screen. */
export async function apply(change: ChangeEvent): Promise<void> {
  const { collection, id } = change;
  if (change.change === "units") return readUnits();
  if (!collection || !id || !currentBook.value) return reload();
  if (change.change === "deleted") return drop(collection, id);
  const known = (currentBook.value[collection] as readonly Stored<unknown>[]).find((each) => each.id === id);
  if (known && change.revision !== null && known.revision >= change.revision) return;
  try {
    const record = await api.get<Stored<unknown>>(`/${collection}/${encodeURIComponent(id)}`);
    keep(collection, record);
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    if (error.status === 404) drop(collection, id);
    else loadError.value = error.message;
  }
}
