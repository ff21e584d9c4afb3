import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it, onTestFinished } from "vitest";
import { copyBeside } from "#server/store/copies.ts";
import { type Database, openDatabase } from "#server/store/database.ts";
import { placeNew } from "#server/store/placing.ts";
import { freshFolder } from "#tests/server/support/book.ts";

const at = new Date("2026-03-01T08:00:00Z");

function openedBook(): Database {
  const database = openDatabase(join(freshFolder(), "book.db"));
  onTestFinished(() => {
    database.close();
  });
  return database;
}

const filesBeside = ({ name }: Database): string[] =>
  readdirSync(dirname(name)).filter((file) => !/^book\.db(-wal|-shm)?$/.test(file));

describe("a copy beside the data file", () => {
  it("whole: has its name, the mark of a book, and leaves nothing half made", () => {
    const database = openedBook();
    database.exec("CREATE TABLE t (a)");
    const copy = copyBeside(database.name, "by-hand", at);
    expect(copy).toBe("book.db.20260301T080000Z-by-hand.bak");
    expect(filesBeside(database)).toEqual([copy]);
    const whole = new SQLite(join(dirname(database.name), copy), { readonly: true });
    expect(whole.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(whole.pragma("application_id", { simple: true })).toBe(0x47524950);
    whole.close();
  });

  it("broken off: has no name, and nothing half made is left", () => {
    const database = openedBook();
    database.exec(
      "CREATE TABLE t (a); INSERT INTO t SELECT zeroblob(4000) FROM (WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 50) SELECT i FROM n)",
    );
    database.pragma("wal_checkpoint(TRUNCATE)");
    const bytes = readFileSync(database.name);
    writeFileSync(database.name, bytes.fill(0x5a, bytes.length / 2, bytes.length / 2 + 8192));
    expect(() => copyBeside(database.name, "by-hand", at)).toThrow(/malformed/);
    expect(filesBeside(database)).toEqual([]);
  });

  it("of a book that its caller is writing to: holds what was there before, and others can't write meanwhile", () => {
    const database = openedBook();
    database.exec("CREATE TABLE t (a); INSERT INTO t VALUES (1)");
    const other = new SQLite(database.name, { timeout: 0 });
    const copy = database
      .transaction(() => {
        const kept = copyBeside(database.name, "by-hand", at);
        expect(() => other.exec("INSERT INTO t VALUES (2)")).toThrow(/locked/);
        database.exec("DELETE FROM t");
        return kept;
      })
      .immediate();
    other.exec("INSERT INTO t VALUES (3)");
    other.close();
    const whole = new SQLite(join(dirname(database.name), copy), { readonly: true });
    expect(whole.prepare("SELECT a FROM t").pluck().all()).toEqual([1]);
    whole.close();
  });

  it("while only half of it is written: carries a name that no copy has", () => {
    const database = openedBook();
    const half = join(dirname(database.name), `book.db.20260301T080000Z-by-hand.${process.pid}.part`);
    mkdirSync(half);
    expect(() => copyBeside(database.name, "by-hand", at)).toThrow();
    expect(filesBeside(database)).toEqual([`book.db.20260301T080000Z-by-hand.${process.pid}.part`]);
  });
});

describe("placeNew, with a name that something else has", () => {
  it("leaves both files as they were", () => {
    const folder = freshFolder();
    const [unfinished, file] = [join(folder, "a.part"), join(folder, "a")];
    writeFileSync(unfinished, "new");
    writeFileSync(file, "old");
    expect(placeNew(unfinished, file)).toBe(false);
    expect([readFileSync(unfinished, "utf8"), readFileSync(file, "utf8")]).toEqual(["new", "old"]);
  });
});
