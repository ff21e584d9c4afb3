import SQLite from "better-sqlite3";
import type { Database } from "#server/store/database.ts";

/** A write that the server said it had stored: the state that it made, or took away. */
export interface Acknowledged {
  readonly id: string;
  readonly revision: number;
  /** what the record says; null where it was deleted */
  readonly data: unknown;
}

type Holds = (write: Acknowledged) => boolean;

const COLLECTION = "surfaces";

/** @returns whether a book holds a write: as it is now, or as what it said before */
function holding(database: Database): Holds {
  const present = database
    .prepare("SELECT body FROM records WHERE collection = ? AND id = ? AND revision >= ?")
    .pluck();
  const state = database
    .prepare(
      `SELECT body FROM records WHERE collection = @collection AND id = @id AND revision = @revision
       UNION ALL SELECT body FROM revisions WHERE collection = @collection AND id = @id AND revision = @revision`,
    )
    .pluck();
  return ({ id, revision, data }) => {
    const said = state.get({ collection: COLLECTION, id, revision }) as string | undefined;
    if (said === undefined) return false;
    return data === null
      ? present.get(COLLECTION, id, revision) === undefined
      : said === JSON.stringify(data);
  };
}

/** @throws {Error} where SQLite finds a fault in the file, or a reference that leads nowhere */
function requireSound(database: Database): void {
  const whole = database.pragma("integrity_check", { simple: true });
  const dangling = database.pragma("foreign_key_check") as unknown[];
  if (whole !== "ok" || dangling.length > 0)
    throw new Error(`${database.name}: ${String(whole)}, ${dangling.length} references lead nowhere`);
}

/** @returns what a check of a file says @throws {Error} where it is not whole */
export function inSound<T>(file: string, read: (database: Database) => T): T {
  const database = new SQLite(file, { fileMustExist: true });
  try {
    requireSound(database);
    return read(database);
  } finally {
    database.close();
  }
}

/** Those of some writes that a whole book doesn't hold. */
export const notIn = (file: string, writes: readonly Acknowledged[]): Acknowledged[] =>
  inSound(file, (database) => {
    const holds = holding(database);
    return writes.filter((write) => !holds(write));
  });
