import { COLLECTION_NAMES, type CollectionName, type Stored } from "../../shared/model/record.ts";
import { byCollection } from "./byCollection.ts";
import type { Collection } from "./collection.ts";
import type { Database } from "./database.ts";
import type { Data, Row } from "./rows.ts";
import { storedOf } from "./rows.ts";

export type Collections = Readonly<Record<CollectionName, Collection>>;

/** Parts after what points to them. */
const USERS_FIRST: readonly CollectionName[] = [...COLLECTION_NAMES].reverse();

type States = Readonly<Record<CollectionName, readonly Stored<Data>[]>>;

/** All records as they are, and all that they said before. */
export interface Book {
  readonly records: States;
  readonly revisions: States;
}

/** Everything that the book holds, read in one transaction. */
export function dump(database: Database): Book {
  const read = database.transaction(() => ({
    records: byCollection((name) => allRecords(database, name).map(storedOf)),
    revisions: byCollection((name) => allRevisions(database, name).map(storedOf)),
  }));
  return read();
}

const allRecords = (database: Database, name: CollectionName): Row[] =>
  database
    .prepare<[], Row>(
      `SELECT id, revision, created_at, updated_at, body FROM ${name} ORDER BY created_at, id`,
    )
    .all();

const allRevisions = (database: Database, name: CollectionName): Row[] =>
  database
    .prepare<[string], Row>(
      "SELECT id, revision, created_at, at AS updated_at, body FROM revisions WHERE collection = ? ORDER BY id, revision",
    )
    .all(name);

/** Empties every table; the caller holds the transaction and has kept a copy. */
export function clear(database: Database): void {
  database.prepare("INSERT INTO meta (key, value) VALUES ('clearing', 'yes')").run();
  for (const name of USERS_FIRST) database.prepare(`DELETE FROM ${name}`).run();
  database.prepare("DELETE FROM revisions").run();
  database.prepare("DELETE FROM meta WHERE key = 'clearing'").run();
}

/** Puts a whole book in; the caller holds the transaction, the tables are empty, the references were checked. */
export function fill(collections: Collections, book: Book): void {
  for (const name of COLLECTION_NAMES) {
    for (const record of book.records[name]) collections[name].insert(record);
    for (const earlier of book.revisions[name]) collections[name].insertRevision(earlier);
  }
}
