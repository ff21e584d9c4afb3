import { COLLECTION_NAMES, type CollectionName, type Stored } from "../../shared/model/record.ts";
import { byCollection } from "./byCollection.ts";
import type { Collection } from "./collection.ts";
import type { Database } from "./database.ts";
import type { Data, Row } from "./rows.ts";
import { ROW_COLUMNS, storedOf } from "./rows.ts";

export type Collections = Readonly<Record<CollectionName, Collection>>;

/** Parts after what points to them. */
const USERS_FIRST: readonly CollectionName[] = [...COLLECTION_NAMES].reverse();

type States = Readonly<Record<CollectionName, readonly Stored<Data>[]>>;

/** All records as they are, and all that they said before. */
export interface Book {
  readonly records: States;
  readonly revisions: States;
}

/** Every record as it is, read in one transaction. */
export function everyRecord(database: Database): States {
  const read = database.transaction(() => byCollection((name) => rowsOf(database, name).map(storedOf)));
  return read();
}

const rowsOf = (database: Database, name: CollectionName): Row[] =>
  database.prepare<[], Row>(`SELECT ${ROW_COLUMNS} FROM ${name} ORDER BY created_at, id`).all();

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
