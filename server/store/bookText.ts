import SQLite from "better-sqlite3";
import { ARCHIVE_VERSION } from "../../shared/model/api/book.ts";
import { COLLECTION_NAMES, type CollectionName } from "../../shared/model/collections.ts";
import type { Database } from "./database.ts";
import { Marks } from "./marks.ts";
import { eachPrediction } from "./predictions.ts";
import { recordJson } from "./rows.ts";
import { unitsIn } from "./shownUnits.ts";

/** About so much goes out at a time [characters]. */
const PIECE = 64_000;

const RECORDS = `SELECT ${recordJson()} FROM records WHERE collection = ? ORDER BY created_at, id`;

const REVISIONS = `SELECT ${recordJson("", "at")} FROM revisions WHERE collection = ? ORDER BY id, revision`;

const DELETIONS = "SELECT collection, id, at AS deletedAt FROM deletions ORDER BY collection, id";

function* listed(database: Database, sql: string, name: CollectionName): Generator<string> {
  let comma = "";
  for (const json of database.prepare<[string], string>(sql).pluck().iterate(name)) {
    yield comma + json;
    comma = ",";
  }
}

function* everyCollection(database: Database, sql: string): Generator<string> {
  let comma = "{";
  for (const name of COLLECTION_NAMES) {
    yield `${comma}"${name}":[`;
    yield* listed(database, sql, name);
    yield "]";
    comma = ",";
  }
  yield "}";
}

function* separated(entries: Iterable<unknown>): Generator<string> {
  let comma = "";
  for (const entry of entries) {
    yield comma + JSON.stringify(entry);
    comma = ",";
  }
}

function* piecesOf(database: Database, exportedAt: string): Generator<string> {
  const marks = new Marks(database);
  const demo = marks.of("demo") === "yes";
  const head = { format: "gripcurve-bench", version: ARCHIVE_VERSION, exportedAt, demo };
  yield `${JSON.stringify(head).slice(0, -1)},"records":`;
  yield* everyCollection(database, RECORDS);
  yield ',"revisions":';
  yield* everyCollection(database, REVISIONS);
  yield ',"deletions":[';
  yield* separated(database.prepare(DELETIONS).iterate());
  yield '],"predictions":[';
  yield* separated(eachPrediction(database));
  yield `],"units":${JSON.stringify(unitsIn(marks))}}`;
}

/**
 * The whole book as an archive, piece by piece: no more of it lies in memory at once. Read through a connection of its
 * own as the book is when the first piece is asked for, whatever is written meanwhile.
 */
export function* bookText(file: string, exportedAt: string): Generator<string> {
  const database = new SQLite(file, { readonly: true, fileMustExist: true });
  try {
    database.exec("BEGIN");
    let piece = "";
    for (const text of piecesOf(database, exportedAt)) {
      piece += text;
      if (piece.length < PIECE) continue;
      yield piece;
      piece = "";
    }
    yield piece;
  } finally {
    database.close();
  }
}
