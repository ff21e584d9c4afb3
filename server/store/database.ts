import { closeSync, fsyncSync, mkdirSync, openSync } from "node:fs";
import { basename, dirname } from "node:path";
import SQLite from "better-sqlite3";

export type Database = SQLite.Database;
/** A prepared statement whose parameters and rows its user knows. */
export type Statement = SQLite.Statement<unknown[]>;

/** How long a writer waits for another process's write before it gives up [ms]. */
const BUSY_TIMEOUT = 10_000;

/** Opens the file (made where missing) so that an acknowledged write outlives a power cut. */
export function openDatabase(file: string): Database {
  mkdirSync(dirname(file), { recursive: true });
  const database = new SQLite(file, { timeout: BUSY_TIMEOUT });
  database.pragma("journal_mode = WAL");
  database.pragma("synchronous = FULL");
  database.pragma("foreign_keys = ON");
  return database;
}

const TIME_MARKS = /[-:]|\.\d+/g;

/**
 * Copies the database to a file beside it, consistent while others read and write, and flushed to the disk.
 *
 * @param reason - ends the copy's name, for example "before-002"
 * @returns the copy's name, without its folder
 */
export function copyBeside(database: Database, reason: string, at: Date): string {
  const stamp = at.toISOString().replace(TIME_MARKS, "");
  const copy = freeName(database, `${database.name}.${stamp}-${reason}`);
  const descriptor = openSync(copy, "r+");
  fsyncSync(descriptor);
  closeSync(descriptor);
  return basename(copy);
}

/** Writes the copy under the first name that nobody has taken: VACUUM INTO refuses a file that holds anything. */
function freeName(database: Database, stem: string): string {
  const vacuum = database.prepare("VACUUM INTO ?");
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? `${stem}.bak` : `${stem}-${number}.bak`;
    try {
      vacuum.run(name);
      return name;
    } catch (error) {
      if (!(error instanceof SQLite.SqliteError) || !error.message.includes("already exists")) throw error;
    }
  }
}
