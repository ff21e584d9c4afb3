import type { Book } from "../../../shared/book/book.ts";
import type { BookFits } from "../../../shared/book/bookFits.ts";
import { EVERY_TEST, isAskedFor, type TestsAsked } from "../../../shared/book/testsAsked.ts";
import { byCollection, COLLECTION_NAMES } from "../../../shared/model/collections.ts";
import type { Stored, StoredOf } from "../../../shared/model/record.ts";
import type { ShownUnits } from "../../../shared/units/showing.ts";
import { Shelf } from "../tests/shelf.ts";
import { type Entry, keepEntries, readEntries, readUnder } from "./database.ts";

/** The bench book as this device knew it last. */
export interface KeptBook {
  readonly book: Book;
  readonly shelf: Shelf;
  readonly isDemo: boolean;
  readonly units: ShownUnits;
  /** of the whole book */
  readonly testCount: number | null;
  /** when it was so; where views were seen at different times, the earliest of them [ms since 1970] */
  readonly at: number;
}

/** Keeps what is no record: which records there are, in their order, and all the rest. */
const ABOUT = "about";
/** Keeps what all tests came to. */
const FITS = "fits";
const DAY = 24 * 3600 * 1000;
/** A view that was not seen for so long is not kept any more [ms]. Judgement. */
const KEPT_FOR = 30 * DAY;

/** Tests that were asked for, and read whole. */
interface Asked {
  readonly asked: TestsAsked;
  readonly at: number;
}

interface About extends Omit<KeptBook, "book" | "shelf"> {
  readonly keys: Readonly<Record<string, readonly string[]>>;
  /** not there where a version of this page kept it that always read the whole book */
  readonly held?: readonly Asked[];
}

const heldOf = ({ held, at }: About): readonly Asked[] => held ?? [{ asked: EVERY_TEST, at }];

/** A record that says something else has another revision, or was written at another time. */
const keyOf = (name: string, { id, revision, updatedAt }: Stored<unknown>): string =>
  `${name}/${id}/${revision}/${updatedAt}`;

const entryOf = (name: string, record: Stored<unknown>): Entry => [keyOf(name, record), record];

/** What earlier visits asked for and this one has not, with its tests as they were then. */
interface Earlier {
  readonly held: readonly Asked[];
  readonly entries: readonly Entry[];
  readonly fits: BookFits | null;
}

/** A test that this visit would know of and doesn't is gone since. */
async function earlier({ shelf, at }: KeptBook): Promise<Earlier> {
  const [about, fits] = (await readUnder([ABOUT, FITS])) as [About | undefined, BookFits | undefined];
  const held = (about ? heldOf(about) : []).filter(
    (each) => !shelf.holds(each.asked) && at - each.at < KEPT_FOR,
  );
  if (!about || held.length === 0) return { held: [], entries: [], fits: null };
  const tests = (await readUnder(about.keys.tests ?? [])) as (StoredOf<"tests"> | undefined)[];
  const isStill = (test: StoredOf<"tests"> | undefined): test is StoredOf<"tests"> =>
    test !== undefined &&
    shelf.get(test.id) === null &&
    !shelf.held.some((asked) => !asked.newest && isAskedFor(asked, test.data)) &&
    held.some(({ asked }) => isAskedFor(asked, test.data));
  const entries = tests.filter(isStill).map((test) => entryOf("tests", test));
  return { held, entries, fits: held.some(({ asked }) => asked.fits) ? (fits ?? null) : null };
}

/** Keeps the book on this device, for when no server answers; only what changed is written. */
export async function keepBook(kept: KeptBook): Promise<void> {
  const { book, shelf, ...about } = kept;
  const before = await earlier(kept);
  const lists = byCollection((name) => [
    ...((name === "tests" ? shelf.tests : book[name]) as readonly Stored<unknown>[]).map((record) =>
      entryOf(name, record),
    ),
    ...(name === "tests" ? before.entries : []),
  ]);
  const keys = byCollection((name) => lists[name].map(([key]) => key));
  const held = [...shelf.held.map((asked): Asked => ({ asked, at: kept.at })), ...before.held];
  const fits = shelf.fits ?? before.fits;
  const entries: Entry[] = [
    ...Object.values(lists).flat(),
    [ABOUT, { ...about, keys, held } satisfies About],
    ...(fits ? [[FITS, fits] as const] : []),
  ];
  await keepEntries(entries, new Set([ABOUT, FITS]));
}

/** @returns the book as it was kept last; null where none was */
export async function keptBook(): Promise<KeptBook | null> {
  const entries = await readEntries();
  const about = entries.get(ABOUT) as About | undefined;
  if (!about) return null;
  const { keys, held: _held, ...rest } = about;
  const held = heldOf(about);
  const lists = COLLECTION_NAMES.map((name) => {
    const records = (keys[name] ?? [])
      .map((key) => entries.get(key))
      .filter((record) => record !== undefined);
    return [name, records];
  });
  const book = Object.fromEntries(lists) as unknown as Book;
  const shelf = new Shelf();
  shelf.put(book.tests);
  const fits = entries.get(FITS) as BookFits | undefined;
  for (const { asked } of held) if (!asked.fits) shelf.hold(asked);
  if (fits && held.some(({ asked }) => asked.fits)) shelf.holdFits(fits);
  return { ...rest, book, shelf, at: Math.min(rest.at, ...held.map(({ at }) => at)) };
}
