import type { Deletion } from "../../shared/model/api/book.ts";
import type { KeptPrediction } from "../../shared/model/api/record.ts";
import { byCollection, COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import type { ShownUnits } from "../../shared/units/showing.ts";
import type { Collection } from "./collection.ts";
import type { Database } from "./database.ts";
import type { Deletions } from "./deletions.ts";
import type { Predictions } from "./predictions.ts";
import { type Data, type Row, rowColumns, storedOf } from "./rows.ts";

export type Collections = Readonly<Record<CollectionName, Collection>>;

/** Where a whole book goes. */
interface FilledStore {
  readonly collections: Collections;
  readonly deletions: Deletions;
  readonly predictions: Predictions;
}

type States = Readonly<Record<CollectionName, readonly Stored<Data>[]>>;

/** Read as often as they are asked for, one at a time: together they may be more than fits into memory. */
type ListedStates = Readonly<Record<CollectionName, Iterable<Stored<Data>>>>;

/** All records as they are, and all that they said before. */
export interface WholeBook {
  readonly records: ListedStates;
  readonly revisions: ListedStates;
  readonly deletions: Iterable<Pick<Deletion, "collection" | "id" | "deletedAt">>;
  /** kept with its tests */
  readonly predictions: Iterable<KeptPrediction>;
  /** in which it shows each quantity; those of the book that it takes the place of stay where it doesn't say */
  readonly units?: ShownUnits;
}

/** The records of a collection as they are, in the order of their entry. */
const RECORDS = `SELECT ${rowColumns()} FROM records WHERE collection = ? ORDER BY created_at, id`;

/** What figures are based on, and nothing struck out: a part keeps its place though it is retired. */
const IN_FORCE = RECORDS.replace("ORDER BY", "AND (withdrawn = '' OR collection <> 'tests') ORDER BY");

/** The book that figures are based on, read in one transaction. */
export function bookInForce(database: Database): States {
  const rows = database.prepare<[string], Row>(IN_FORCE);
  const read = database.transaction(() => byCollection((name) => rows.all(name).map(storedOf)));
  return read();
}

const TABLES = [
  "owed",
  "undo",
  "uses",
  "records",
  "deletions",
  "revisions",
  "idempotency_keys",
  "predictions",
];

/** Empties every table; the caller holds the transaction and has kept a copy. */
export function clear(database: Database): void {
  database.prepare("INSERT INTO meta (key, value) VALUES ('clearing', 'yes')").run();
  for (const table of TABLES) database.prepare(`DELETE FROM ${table}`).run();
  database.prepare("DELETE FROM meta WHERE key = 'clearing'").run();
}

/** Puts a whole book in; the caller holds the transaction, the tables are empty, the references were checked. */
export function fill(store: FilledStore, database: Database, book: WholeBook): void {
  // What uses a part may come before it.
  database.pragma("defer_foreign_keys = ON");
  for (const name of COLLECTION_NAMES) {
    for (const record of book.records[name]) store.collections[name].insert(record);
    for (const earlier of book.revisions[name]) store.collections[name].insertRevision(earlier);
  }
  store.deletions.noteMissing(book.deletions);
  for (const kept of book.predictions) store.predictions.keep(kept);
}
