import { closeSync, copyFileSync, existsSync, openSync, readSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import SQLite from "better-sqlite3";
import { tempFolder } from "../tempFolder.ts";

/** "GRIP", as SQLite keeps it in the header of the files of one program. */
export const APPLICATION_ID = 0x47524950;

/** The file that should hold the bench book can't be used as it is; it was left untouched. */
export class DataFileError extends Error {
  readonly code = "data-file";
  constructor(
    readonly file: string,
    what: string,
    remedy: string,
  ) {
    super(`${file} ${what}. ${remedy}`);
    this.name = "DataFileError";
  }
}

const OTHER_FILE = "Name another file with GRIPCURVE_DB.";

/** SQLite's header: https://www.sqlite.org/fileformat.html, section 1.3. */
const HEADER = { bytes: 100, magic: "SQLite format 3\0", applicationId: 68 };

/** Tables that every book had before its files carried {@link APPLICATION_ID}. */
const EARLY_TABLES = [
  "builds",
  "meta",
  "motors",
  "packs",
  "revisions",
  "rotors",
  "skirts",
  "surfaces",
  "tests",
];

/**
 * Looks whether a file is a bench book, without writing to it or beside it.
 *
 * @throws {DataFileError} on a folder, an empty file, a file that is no database, another program's database
 */
export function requireBook(file: string): void {
  if (!existsSync(file)) return;
  const { size } = ordinaryFile(file);
  if (size === 0) {
    // SQLite would take it for a new database and delete the log beside it.
    const remedy =
      "A copy that was broken off looks like this. Put a backup in its place, or move it away to begin a new book.";
    throw new DataFileError(file, "is empty, 0 bytes long", remedy);
  }
  const header = headerOf(file);
  if (header.subarray(0, HEADER.magic.length).toString("latin1") !== HEADER.magic) {
    throw new DataFileError(file, "is no SQLite database", OTHER_FILE);
  }
  if (header.readInt32BE(HEADER.applicationId) !== APPLICATION_ID) requireEarlyBook(file);
}

function ordinaryFile(file: string): { readonly size: number } {
  const stats = statSync(file);
  if (!stats.isFile()) throw new DataFileError(file, "is no file", OTHER_FILE);
  return stats;
}

const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;

function headerOf(file: string): Buffer {
  const header = Buffer.alloc(HEADER.bytes);
  const descriptor = openSync(file, "r");
  readSync(descriptor, header, 0, HEADER.bytes, 0);
  closeSync(descriptor);
  return header;
}

/** A book from before the mark, one whose mark is still in its write-ahead log, or a database without a table. */
function requireEarlyBook(file: string): void {
  const { applicationId, tables } = lookInside(file);
  if (applicationId === APPLICATION_ID) return;
  const isEarly =
    EARLY_TABLES.every((name) => tables.includes(name)) && tables.length === EARLY_TABLES.length;
  if (applicationId === 0 && (isEarly || tables.length === 0)) return;
  const named = tables.slice(0, 3).join(", ");
  const what = `belongs to another program${named ? ` (it has the tables ${named}${tables.length > 3 ? ", …" : ""})` : ""}`;
  throw new DataFileError(file, what, `Nothing was written to it. ${OTHER_FILE}`);
}

interface Inside {
  readonly applicationId: number;
  readonly tables: readonly string[];
}

/** Even a reader leaves files beside a database in WAL mode, so that a copy is opened in its place. */
function lookInside(file: string): Inside {
  const folder = tempFolder("look");
  const copy = join(folder, "copy.db");
  try {
    copyFileSync(file, copy);
    if (sizeOf(`${file}-wal`) > 0) copyFileSync(`${file}-wal`, `${copy}-wal`);
    const database = new SQLite(copy);
    try {
      const named =
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite~_%' ESCAPE '~' ORDER BY name";
      return {
        applicationId: database.pragma("application_id", { simple: true }) as number,
        tables: database.prepare<[], string>(named).pluck().all(),
      };
    } finally {
      database.close();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
