import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { APPLICATION_ID, DataFileError } from "#server/store/dataFile.ts";
import { openStore } from "#server/store/store.ts";
import { freshFolder } from "#tests/server/support/book.ts";

const at = new Date("2026-03-01T08:00:00Z");

/** Another program's database, left in the mode and in the state that are asked for. */
function foreignDatabase(file: string, ...sql: string[]): void {
  const database = new SQLite(file);
  for (const statement of sql) database.exec(statement);
  database.close();
}

const stateOf = (file: string) => ({
  bytes: readFileSync(file).toString("base64"),
  changed: statSync(file).mtimeMs,
  beside: readdirSync(dirname(file)),
});

/** @returns the refusal; fails the test where the file, or anything beside it, was touched */
function refusalOf(file: string): DataFileError {
  const before = stateOf(file);
  try {
    openStore(file, at).close();
  } catch (error) {
    if (!(error instanceof DataFileError)) throw error;
    expect(stateOf(file)).toEqual(before);
    return error;
  }
  throw new Error("it was opened");
}

describe("a data file that is no bench book", () => {
  it.each([
    ["in rollback mode", ["CREATE TABLE orders (a)"]],
    ["in WAL mode", ["PRAGMA journal_mode = WAL", "CREATE TABLE orders (a)"]],
    ["with our schema number", ["CREATE TABLE orders (a)", "PRAGMA user_version = 3"]],
    ["with tables of our names among others", ["CREATE TABLE tests (a); CREATE TABLE orders (a)"]],
    ["marked as another program's, without a table yet", ["PRAGMA application_id = 252006674"]],
  ])(
    "but another program's database, %s: is refused by name, and neither it nor its folder is touched",
    (_, sql) => {
      const file = join(freshFolder(), "orders.db");
      foreignDatabase(file, ...sql);
      const { message } = refusalOf(file);
      expect(message).toContain(`${file} belongs to another program`);
      expect(message).toContain("GRIPCURVE_DB");
      if (sql.join().includes("orders")) expect(message).toContain("orders");
    },
  );

  it("but a database whose tables are still in its log: is refused, its log kept", () => {
    const file = join(freshFolder(), "orders.db");
    const other = new SQLite(file);
    other.exec("PRAGMA journal_mode = WAL; CREATE TABLE orders (a)");
    const log = readFileSync(`${file}-wal`);
    expect(() => openStore(file, at)).toThrow(/belongs to another program/);
    expect(readFileSync(`${file}-wal`).equals(log)).toBe(true);
    other.close();
  });

  it("but empty, 0 bytes long: is said to be so, with what to do", () => {
    const file = join(freshFolder(), "book.db");
    writeFileSync(file, "");
    expect(refusalOf(file).message).toMatch(/is empty, 0 bytes long\. .*backup/);
    writeFileSync(`${file}-wal`, "what a broken copy left");
    expect(refusalOf(file).message).toMatch(/is empty/);
    expect(readFileSync(`${file}-wal`, "utf8")).toBe("what a broken copy left");
  });

  it("but text, or a folder: is refused by name", () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "notes.txt"), "a list of parts\n".repeat(20));
    expect(refusalOf(join(folder, "notes.txt")).message).toMatch(/notes\.txt is no SQLite database/);
    mkdirSync(join(folder, "inner"));
    expect(() => openStore(join(folder, "inner"), at)).toThrow(/inner is no file/);
  });
});

describe("a bench book's file", () => {
  it("when it is new: bears the program's mark, and its folder holds nothing half made", () => {
    const file = join(freshFolder(), "deep", "book.db");
    openStore(file, at).close();
    expect(readFileSync(file).readInt32BE(68)).toBe(APPLICATION_ID);
    expect(readdirSync(dirname(file))).toEqual(["book.db"]);
  });

  it("when it is a database without a table: becomes a book", () => {
    const file = join(freshFolder(), "book.db");
    foreignDatabase(file, "PRAGMA journal_mode = WAL");
    openStore(file, at).close();
    expect(readFileSync(file).readInt32BE(68)).toBe(APPLICATION_ID);
  });
});
