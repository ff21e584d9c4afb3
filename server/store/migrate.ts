import { copyBeside } from "./copies.ts";
import type { Database } from "./database.ts";
import type { Migration } from "./migrations.ts";

/** The file was written by a later version of the program; opening it could lose what that version keeps. */
export class NewerBookError extends Error {
  readonly code = "newer-book";
  constructor(
    readonly file: string,
    readonly found: number,
    readonly known: number,
  ) {
    super(
      `The bench book ${file} has schema ${found}; this version of Gripcurve knows ${known} and below. Use the later version, or another file with GRIPCURVE_DB.`,
    );
    this.name = "NewerBookError";
  }
}

export const schemaVersion = (database: Database): number =>
  database.pragma("user_version", { simple: true }) as number;

/**
 * Brings the file to the latest schema in one transaction; a file that already holds a schema is copied beside itself first.
 *
 * @returns the copy's name, or null where nothing was there to copy
 * @throws {NewerBookError} on a file of a later schema
 */
export function migrate(database: Database, migrations: readonly Migration[], at: Date): string | null {
  const latest = Math.max(0, ...migrations.map(({ version }) => version));
  const found = schemaVersion(database);
  if (found > latest) throw new NewerBookError(database.name, found, latest);
  if (found === latest) return null;
  const copy = found > 0 ? copyBeside(database.name, `before-${String(latest).padStart(3, "0")}`, at) : null;
  const run = database.transaction(() => {
    // Another process may have done some of it between the look above and this lock.
    const from = schemaVersion(database);
    for (const { version, sql } of migrations) {
      if (version > from) database.exec(sql);
    }
    database.pragma(`user_version = ${Math.max(from, latest)}`);
  });
  run.immediate();
  return copy;
}
