import { existsSync, mkdirSync, rmSync } from "node:fs";
import { dirname } from "node:path";
import SQLite from "better-sqlite3";
import { APPLICATION_ID, requireBook } from "./dataFile.ts";
import { placeNew, UNFINISHED } from "./placing.ts";

export type Database = SQLite.Database;
/** A prepared statement whose parameters and rows its user knows. */
export type Statement = SQLite.Statement<unknown[]>;

/** How long the start waits for another process's write [ms]. */
const START_TIMEOUT = 10_000;

/**
 * Opens the file (made where missing) so that an acknowledged write outlives a power cut.
 *
 * @throws {DataFileError} on a file that holds anything but a bench book
 */
export function openDatabase(file: string): Database {
  mkdirSync(dirname(file), { recursive: true });
  requireBook(file);
  if (!existsSync(file)) beginFile(file);
  const database = new SQLite(file, { timeout: START_TIMEOUT, fileMustExist: true });
  database.pragma("journal_mode = WAL");
  database.pragma("synchronous = FULL");
  database.pragma("foreign_keys = ON");
  return database;
}

/**
 * Ends the waiting of the start: from here on a statement that meets another process's lock fails at once, so that a
 * request that waits holds up no other; {@link patiently} tries it again.
 */
export function endWaiting(database: Database): void {
  database.pragma("busy_timeout = 0");
}

/** A new file bears the program's mark from its first moment, and its name only then. Of two servers that begin at once, one does. */
function beginFile(file: string): void {
  const unfinished = `${file}.${process.pid}${UNFINISHED}`;
  rmSync(unfinished, { force: true });
  const database = new SQLite(unfinished);
  database.pragma("journal_mode = WAL");
  database.pragma(`application_id = ${APPLICATION_ID}`);
  database.close();
  placeNew(unfinished, file);
  rmSync(unfinished, { force: true });
}
