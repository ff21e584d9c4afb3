import SQLite from "better-sqlite3";
import type { Book } from "../../shared/book/book.ts";
import type { Logged } from "../../shared/book/record/foretell.ts";
import type { KeptPrediction } from "../../shared/model/api/record.ts";
import type { BenchTest } from "../../shared/model/tests/index.ts";
import { bookThen, testAt } from "../store/bookThen.ts";
import type { Database } from "../store/database.ts";
import { OtherWriters } from "../store/others.ts";
import { allOwed, type Debt } from "../store/owed.ts";
import { allPredictions, Predictions } from "../store/predictions.ts";
import type { Data } from "../store/rows.ts";
import { bookInForce } from "../store/wholeBook.ts";

/** One bench book as a thread reads it: through a connection of its own, which never writes. */
interface Reading {
  readonly file: string;
  readonly database: Database;
  readonly others: OtherWriters;
  book: Book | null;
}

let reading: Reading | null = null;

function readingOf(file: string): Reading {
  if (reading?.file === file) return reading;
  closeBook();
  const database = new SQLite(file, { readonly: true, fileMustExist: true });
  reading = { file, database, others: new OtherWriters(database), book: null };
  return reading;
}

/** @returns the bench book in a file, read anew after each write */
export function bookIn(file: string): Book {
  const now = readingOf(file);
  if (now.others.haveWritten()) now.book = null;
  // What lies in the store went through the schemas when it was written.
  now.book ??= bookInForce(now.database) as unknown as Book;
  return now.book;
}

/** @returns what was predicted for the tests of the book in a file, as it is kept with them */
export const predictionsIn = (file: string): KeptPrediction[] => allPredictions(readingOf(file).database);

/** @returns tests of the book in a file that a prediction is still owed to */
export const owedIn = (file: string): string[] => allOwed(readingOf(file).database);

/** @returns the book in a file as it was when a prediction was owed to a test, and that test */
export function loggedIn(file: string, debt: Debt): { readonly book: Book; readonly logged: Logged } {
  const { database } = readingOf(file);
  const { test: id, revision, at } = debt;
  const stateAt = (which: number) => testAt(database, id, which) as (BenchTest & Data) | null;
  const read = database.transaction(() => {
    const test = stateAt(revision);
    if (!test) throw new Error(`The test ${id} has no revision ${revision}.`);
    const kept = new Predictions(database).of(id)?.rows ?? [];
    const logged = { id, test, before: stateAt(revision - 1), kept, today: at.slice(0, 10) };
    return { book: bookThen(database, bookIn(file), debt), logged };
  });
  return read();
}

/** Lets the file go that was read last. */
export function closeBook(): void {
  reading?.database.close();
  reading = null;
}
