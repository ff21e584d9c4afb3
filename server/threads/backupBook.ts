import { copyFileSync, rmSync } from "node:fs";
import { basename, join } from "node:path";
import SQLite from "better-sqlite3";
import type { BackupContents } from "../../shared/model/api/book.ts";
import { Refusal } from "../refusal.ts";
import { backupPath } from "../store/backups.ts";
import { bookText } from "../store/bookText.ts";
import { DataFileError, requireBook } from "../store/dataFile.ts";
import { migrate, NewerBookError } from "../store/migrate.ts";
import { MIGRATIONS } from "../store/migrations.ts";
import { requireIntact } from "../store/wholeCheck.ts";
import { tempFolder } from "../tempFolder.ts";
import { archiveBook, type CheckedBook } from "./archiveBook.ts";

const unusable = (name: string, why: string): Refusal =>
  new Refusal(422, "backup", `The copy ${name} can't be used: ${why} Nothing was changed.`);

/** SQLite's own look through a file: pages, indexes, references. */
function requireWhole(database: SQLite.Database, name: string): void {
  const [first] = database.pragma("quick_check(1)") as { readonly quick_check: string }[];
  if (first.quick_check !== "ok")
    throw unusable(name, `it is damaged (${first.quick_check.split("\n").at(-1)}).`);
}

function* bytesOf(pieces: Iterable<string>): Generator<Uint8Array> {
  for (const piece of pieces) yield Buffer.from(piece);
}

function readCopy(file: string, name: string, at: Date): CheckedBook {
  requireBook(file);
  const database = new SQLite(file);
  try {
    requireWhole(database, name);
    migrate(database, MIGRATIONS, at);
  } finally {
    database.close();
  }
  return archiveBook(bytesOf(bookText(file, at.toISOString())), requireIntact);
}

/**
 * Reads and checks a copy that lies beside the data file; it stays as it is.
 *
 * @param file - the data file
 * @param name - the copy's, without its folder
 * @throws {Refusal} 404 where there is no such copy; 422 where it is damaged, of a later version, or not whole
 */
export function readBackup(file: string, name: string, at: Date): CheckedBook {
  const path = backupPath(file, name);
  if (path === null)
    throw new Refusal(404, "unknown-backup", `There is no copy ${name} beside the data file.`);
  const folder = tempFolder("restore");
  try {
    const copy = join(folder, basename(file));
    copyFileSync(path, copy);
    return readCopy(copy, name, at);
  } catch (error) {
    if (error instanceof DataFileError || error instanceof NewerBookError)
      throw unusable(name, error.message.replace(`${join(folder, basename(file))} `, "it "));
    if (error instanceof SQLite.SqliteError && /CORRUPT|NOTADB/.test(error.code))
      throw unusable(name, `it is damaged (${error.message}).`);
    if (error instanceof Refusal && error.code !== "backup") throw unusable(name, error.message);
    throw error;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export interface BackupAsked {
  readonly file: string;
  readonly name: string;
  readonly at: Date;
}

/** @returns what a copy holds, once it was checked as for being restored @throws {Refusal} as {@link readBackup} */
export function backupContents({ file, name, at }: BackupAsked): BackupContents {
  const { book, demo } = readBackup(file, name, at);
  try {
    return { name, demo, counts: book.counts() };
  } finally {
    book.close();
  }
}
