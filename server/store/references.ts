import type { FieldError } from "../../shared/model/api/errors.ts";
import { type CollectionName, REFERENCE_KEYS, referencesOf } from "../../shared/model/record.ts";
import type { Database } from "./database.ts";
import { UnknownPartError, type User } from "./errors.ts";
import type { Data } from "./rows.ts";

/** Looks after what points to what: no build or test without its parts, no part gone while it is used. */
export class References {
  readonly #exists: ReadonlyMap<string, { get(id: string): unknown }>;
  readonly #users: ReadonlyMap<string, { all(inBuilds: string, inTests: string): User[] }>;

  constructor(database: Database) {
    const parts = Object.entries(REFERENCE_KEYS);
    this.#exists = new Map(
      parts.map(([, collection]) => [
        collection,
        database.prepare<[string]>(`SELECT 1 FROM ${collection} WHERE id = ?`),
      ]),
    );
    this.#users = new Map(
      parts.map(([key, collection]) => {
        const users = (table: User["collection"]) =>
          `SELECT '${table}' AS collection, id, name FROM ${table} WHERE ${key} = ?`;
        const sql = `${users("builds")} UNION ALL ${users("tests")}`;
        return [collection, database.prepare<[string, string], User>(sql)];
      }),
    );
  }

  /** @throws {UnknownPartError} naming each field that points to nothing */
  requireParts(data: Data): void {
    const fields = referencesOf(data).flatMap(({ key, collection, id }): FieldError[] =>
      this.#exists.get(collection)?.get(id)
        ? []
        : [{ path: key, message: `Read "${id}"; allowed: the id of one of the stored ${collection}.` }],
    );
    if (fields.length > 0) throw new UnknownPartError(fields);
  }

  /** @returns the builds and the tests that point to the part */
  usersOf(collection: CollectionName, id: string): User[] {
    return this.#users.get(collection)?.all(id, id) ?? [];
  }
}
