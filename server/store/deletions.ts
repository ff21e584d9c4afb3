import type { Deletion } from "../../shared/model/api/book.ts";
import type { CollectionName } from "../../shared/model/collections.ts";
import { type Cursor, placeOf, writeCursor } from "./cursor.ts";
import type { Database, Statement } from "./database.ts";
import { type Data, LOOKUP, lookupValues, type Row } from "./rows.ts";

/** A page of what was deleted. */
export interface DeletionPage {
  readonly items: readonly Deletion[];
  readonly next: Cursor | null;
}

/** A place after every row that there can be: the list begins with what was deleted last. */
const START = ["~", "~", "~"];

const COLUMNS =
  "collection, id, revision, name, nullif(kind, '') AS kind, nullif(day, '') AS date, at AS deletedAt";

const MISSING = `INSERT INTO deletions (collection, id, name, kind, day, revision, at)
  SELECT collection, id, coalesce(body ->> '$.name', body ->> '$.title', ''), coalesce(body ->> '$.kind', ''),
         coalesce(body ->> '$.date', ''), max(revision), at
  FROM revisions AS past
  WHERE NOT EXISTS (SELECT 1 FROM records WHERE records.collection = past.collection AND records.id = past.id)
  GROUP BY collection, id`;

/** Remembers what was deleted and when, so that it can be found and come back; its callers hold the transaction. */
export class Deletions {
  readonly #note: Statement;
  readonly #forget: Statement;
  readonly #page: Statement;
  readonly #noteMissing: Statement;
  readonly #say: Statement;

  constructor(database: Database) {
    const lookup = LOOKUP.filter((column) => column !== "withdrawn");
    this.#note = database.prepare(
      `INSERT INTO deletions (collection, id, revision, at, ${lookup.join(", ")}) VALUES (?, ?, ?, ?, ?, ?, ?)`,
    );
    this.#forget = database.prepare("DELETE FROM deletions WHERE collection = ? AND id = ?");
    this.#noteMissing = database.prepare(MISSING);
    this.#say = database.prepare("UPDATE deletions SET at = ? WHERE collection = ? AND id = ?");
    this.#page = database.prepare(
      `SELECT ${COLUMNS} FROM deletions WHERE (at, collection, id) < (?, ?, ?) ORDER BY at DESC, collection DESC, id DESC LIMIT ?`,
    );
  }

  /** Notes that a record was deleted; its last state lies among its revisions. */
  note(collection: CollectionName, { id, revision, body }: Row, at: string): void {
    const [name, kind, day] = lookupValues(JSON.parse(body) as Data);
    this.#note.run(collection, id, revision, at, name, kind, day);
  }

  /** Notes what has revisions and no record: it was deleted when that is said, else after its last correction. */
  noteMissing(said: Iterable<Pick<Deletion, "collection" | "id" | "deletedAt">>): void {
    this.#noteMissing.run();
    for (const { collection, id, deletedAt } of said) this.#say.run(deletedAt, collection, id);
  }

  /** It came back. */
  forget(collection: CollectionName, id: string): void {
    this.#forget.run(collection, id);
  }

  /** @throws {CursorError} */
  page(limit: number, cursor?: Cursor): DeletionPage {
    const place = cursor ? placeOf(cursor, START.length) : START;
    // One row more than asked for says whether another page follows.
    const rows = this.#page.all(...place, limit + 1) as Deletion[];
    const items = rows.slice(0, limit);
    const last = items.at(-1);
    const hasMore = rows.length > limit && last !== undefined;
    return { items, next: hasMore ? writeCursor([last.deletedAt, last.collection, last.id]) : null };
  }
}
