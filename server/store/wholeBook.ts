import { byCollection, type CollectionName } from "../../shared/model/collections.ts";
import type { Stored } from "../../shared/model/record.ts";
import type { Database } from "./database.ts";
import type { Deletions } from "./deletions.ts";
import type { Predictions } from "./predictions.ts";
import { type Data, LOOKUP, type Row, rowColumns, storedOf } from "./rows.ts";
import type { Staged } from "./staged.ts";

/** Where a whole book goes, beside its tables of records. */
interface FilledStore {
  readonly deletions: Deletions;
  readonly predictions: Predictions;
}

type States = Readonly<Record<CollectionName, readonly Stored<Data>[]>>;

/** What figures are based on, in the order of its entry, and nothing struck out: a part keeps its place though it is retired. */
const IN_FORCE = `SELECT ${rowColumns()} FROM records
  WHERE collection = ? AND (withdrawn = '' OR collection <> 'tests') ORDER BY created_at, id`;

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

const RECORD = ["collection", "id", "revision", "created_at", "updated_at", "body", ...LOOKUP].join();
const USE = ["collection", "id", "part_collection", "part", "day", "created_at"].join();
const EARLIER = ["collection", "id", "revision", "body", "created_at", "at"].join();

/** By the tables that they go to, columns of what is staged, in the order of theirs. */
const STEPS = [
  ["INSERT INTO records", RECORD, `SELECT ${RECORD} FROM states WHERE part = 'records'`],
  [
    "INSERT INTO revisions",
    EARLIER,
    "SELECT collection, id, revision, body, created_at, updated_at FROM states WHERE part = 'revisions'",
  ],
  // A record may point to the same part from several places.
  [
    "INSERT OR IGNORE INTO uses",
    USE,
    "SELECT collection, id, part_collection, part_id, day, created_at FROM uses WHERE part = 'records'",
  ],
] as const;

/** Puts a whole book in; the caller holds the transaction, the tables are empty, the references were checked. */
export function fill(store: FilledStore, database: Database, staged: Staged): void {
  for (const [into, columns, from] of STEPS) {
    const marks = columns.replace(/\w+/g, "?");
    const put = database.prepare(`${into} (${columns}) VALUES (${marks})`);
    for (const row of staged.database.prepare(from).raw().iterate() as Iterable<unknown[]>) put.run(row);
  }
  store.deletions.noteMissing(staged.deletions());
  for (const kept of staged.predictions()) store.predictions.keep(kept);
}
