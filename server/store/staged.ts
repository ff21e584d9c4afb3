import SQLite from "better-sqlite3";
import type { Deletion } from "../../shared/model/api/book.ts";
import type { KeptPrediction } from "../../shared/model/api/record.ts";
import { byCollection, COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import { referencesOf, type Stored } from "../../shared/model/record.ts";
import type { ShownUnits } from "../../shared/units/showing.ts";
import type { Database, Statement } from "./database.ts";
import { type Data, dayOf, LOOKUP, lookupValues } from "./rows.ts";

/** So much of it lies in memory, the rest in a file that nobody else sees and that goes with it [kB]. */
const IN_MEMORY = 8_000;

/** A record as it is, or what it said before. */
export type Part = "records" | "revisions";

/** What was deleted, as an archive says it. */
export type Noted = Pick<Deletion, "collection" | "id" | "deletedAt">;

/** All records as they are, and all that they said before. */
export interface WholeBook {
  readonly records: Readonly<Record<CollectionName, Iterable<Stored<Data>>>>;
  readonly revisions: Readonly<Record<CollectionName, Iterable<Stored<Data>>>>;
  readonly deletions: Iterable<Noted>;
  /** kept with its tests */
  readonly predictions: Iterable<KeptPrediction>;
}

const TABLES = `
  CREATE TABLE states (
    part TEXT, collection TEXT, place INTEGER, id TEXT, revision INTEGER, created_at TEXT, updated_at TEXT, body TEXT,
    name TEXT, kind TEXT, day TEXT, withdrawn TEXT
  );
  CREATE TABLE uses (
    part TEXT, collection TEXT, place INTEGER, id TEXT, path TEXT, part_collection TEXT, part_id TEXT, day TEXT,
    created_at TEXT
  );
  CREATE TABLE others (list TEXT, body TEXT);`;

const marks = (count: number): string => Array.from({ length: count }, () => "?").join(", ");

/**
 * A whole book on its way in: each state as the JSON that it will be kept as, beside it what it is looked up by and what
 * it points to. What is read of it once need not be read again: checks and the way into the book are statements of SQL.
 */
export class Staged {
  /** in which it shows each quantity; those of the book that it takes the place of stay where it doesn't say */
  units?: ShownUnits;
  readonly database: Database;
  readonly #state: Statement;
  readonly #use: Statement;
  readonly #other: Statement;
  #isIndexed = false;

  constructor() {
    this.database = new SQLite("");
    this.database.exec(`PRAGMA journal_mode = OFF; PRAGMA cache_size = -${IN_MEMORY}; ${TABLES} BEGIN`);
    this.#state = this.database.prepare(`INSERT INTO states VALUES (${marks(8 + LOOKUP.length)})`);
    this.#use = this.database.prepare(`INSERT INTO uses VALUES (${marks(9)})`);
    this.#other = this.database.prepare("INSERT INTO others VALUES (?, ?)");
  }

  /** @returns a book that lies in memory, staged; its caller closes it */
  static of(book: WholeBook): Staged {
    const staged = new Staged();
    for (const part of ["records", "revisions"] as const)
      for (const name of COLLECTION_NAMES) {
        let place = 0;
        for (const state of book[part][name]) staged.putState(part, name, place++, state);
      }
    for (const each of book.deletions) staged.putOther("deletions", each);
    for (const each of book.predictions) staged.putOther("predictions", each);
    return staged;
  }

  /** @param place - in its list, from 0 */
  putState(part: Part, name: CollectionName, place: number, state: Stored<Data>): void {
    const { id, revision, createdAt, updatedAt, data } = state;
    const body = JSON.stringify(data);
    this.#state.run(part, name, place, id, revision, createdAt, updatedAt, body, ...lookupValues(data));
    for (const to of referencesOf(name, data))
      this.#use.run(part, name, place, id, to.path, to.collection, to.id, dayOf(data), createdAt);
  }

  putOther(list: "deletions" | "predictions", entry: Noted | KeptPrediction): void {
    this.#other.run(list, JSON.stringify(entry));
  }

  /** @returns what was deleted, one at a time */
  deletions(): Generator<Noted> {
    return this.#others<Noted>("deletions");
  }

  /** @returns what was predicted, one at a time */
  predictions(): Generator<KeptPrediction> {
    return this.#others<KeptPrediction>("predictions");
  }

  /** @returns how many records each collection has */
  counts(): Readonly<Record<CollectionName, number>> {
    const sql = "SELECT collection, count(*) FROM states WHERE part = 'records' GROUP BY collection";
    const counts = new Map(this.database.prepare(sql).raw().all() as [string, number][]);
    return byCollection((name) => counts.get(name) ?? 0);
  }

  /** Makes states be found by their id, once all are in. */
  index(): void {
    if (!this.#isIndexed)
      this.database.exec("CREATE INDEX by_id ON states (collection, id, revision, part, place)");
    this.#isIndexed = true;
  }

  close(): void {
    this.database.close();
  }

  *#others<T>(list: string): Generator<T> {
    const read = this.database.prepare<[string], string>("SELECT body FROM others WHERE list = ?").pluck();
    for (const body of read.iterate(list)) yield JSON.parse(body) as T;
  }
}
