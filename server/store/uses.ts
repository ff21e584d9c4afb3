import type { FieldError } from "../../shared/model/api/errors.ts";
import type { CollectionName } from "../../shared/model/collections.ts";
import { referencesOf, type Stored } from "../../shared/model/record.ts";
import type { Database, Statement } from "./database.ts";
import { UnknownPartError, type User } from "./errors.ts";
import { type Data, dayOf } from "./rows.ts";

/** Looks after what points to what, in any collection: no record without what it points to, nothing gone while it is used. */
export class Uses {
  readonly #exists: Statement;
  readonly #users: Statement;
  readonly #forget: Statement;
  readonly #note: Statement;

  constructor(database: Database) {
    this.#exists = database.prepare("SELECT 1 FROM records WHERE collection = ? AND id = ?");
    this.#users = database.prepare(
      `SELECT u.collection, u.id, r.name FROM uses AS u JOIN records AS r ON r.collection = u.collection AND r.id = u.id
       WHERE u.part_collection = ? AND u.part = ? ORDER BY u.collection, u.day DESC, u.created_at, u.id`,
    );
    this.#forget = database.prepare("DELETE FROM uses WHERE collection = ? AND id = ?");
    this.#note = database.prepare(
      "INSERT OR IGNORE INTO uses (collection, id, part_collection, part, day, created_at) VALUES (?, ?, ?, ?, ?, ?)",
    );
  }

  /** @throws {UnknownPartError} naming each field that points to nothing */
  requireParts(name: CollectionName, data: Data): void {
    const fields = referencesOf(name, data).flatMap(({ path, collection, id }): FieldError[] =>
      this.#exists.get(collection, id)
        ? []
        : [{ path, message: `Read "${id}"; allowed: the id of one of the stored ${collection}.` }],
    );
    if (fields.length > 0) throw new UnknownPartError(fields);
  }

  /** @returns what points to the record */
  usersOf(collection: CollectionName, id: string): User[] {
    return this.#users.all(collection, id) as User[];
  }

  /** Notes what a record points to, in the place of what it pointed to before. */
  note(name: CollectionName, { id, createdAt, data }: Stored<Data>): void {
    this.#forget.run(name, id);
    for (const part of referencesOf(name, data))
      this.#note.run(name, id, part.collection, part.id, dayOf(data), createdAt);
  }
}
