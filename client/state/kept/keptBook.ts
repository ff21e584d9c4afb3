import type { Book } from "../../../shared/book/book.ts";
import { byCollection, COLLECTION_NAMES } from "../../../shared/model/collections.ts";
import type { Stored } from "../../../shared/model/record.ts";
import type { ShownUnits } from "../../../shared/units/showing.ts";
import { type Entry, keepEntries, readEntries } from "./database.ts";

/** The bench book as this device knew it last. */
export interface KeptBook {
  readonly book: Book;
  readonly isDemo: boolean;
  readonly units: ShownUnits;
  /** when it was so [ms since 1970] */
  readonly at: number;
}

/** Keeps what is no record: which records there are, in their order, and all the rest. */
const ABOUT = "about";

interface About extends Omit<KeptBook, "book"> {
  readonly keys: Readonly<Record<string, readonly string[]>>;
}

/** A record that says something else has another revision, or was written at another time. */
const keyOf = (name: string, { id, revision, updatedAt }: Stored<unknown>): string =>
  `${name}/${id}/${revision}/${updatedAt}`;

/** Keeps the book on this device, for when no server answers; only what changed is written. */
export async function keepBook({ book, ...about }: KeptBook): Promise<void> {
  const lists = byCollection((name) =>
    (book[name] as readonly Stored<unknown>[]).map((record): Entry => [keyOf(name, record), record]),
  );
  const keys = byCollection((name) => lists[name].map(([key]) => key));
  const entries = [...Object.values(lists).flat(), [ABOUT, { ...about, keys } satisfies About] as const];
  await keepEntries(entries, new Set([ABOUT]));
}

/** @returns the book as it was kept last; null where none was */
export async function keptBook(): Promise<KeptBook | null> {
  const entries = await readEntries();
  const about = entries.get(ABOUT) as About | undefined;
  if (!about) return null;
  const { keys, ...rest } = about;
  const lists = COLLECTION_NAMES.map((name) => {
    const records = (keys[name] ?? [])
      .map((key) => entries.get(key))
      .filter((record) => record !== undefined);
    return [name, records];
  });
  return { ...rest, book: Object.fromEntries(lists) as unknown as Book };
}
