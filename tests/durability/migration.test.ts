import { readdirSync } from "node:fs";
import { join } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it, onTestFinished } from "vitest";
import { type Database, openDatabase } from "#server/store/database.ts";
import { migrate, NewerBookError, schemaVersion } from "#server/store/migrate.ts";
import { MIGRATIONS } from "#server/store/migrations.ts";
import { openStore } from "#server/store/store.ts";
import { freshFolder, idsOf } from "#tests/server/support/book.ts";
import { sampleBuild, samples } from "#tests/server/support/records.ts";

const at = new Date("2026-03-01T08:00:00Z");
const TIME = at.toISOString();
const LATEST = MIGRATIONS[MIGRATIONS.length - 1].version;
const BEFORE = `before-${String(LATEST).padStart(3, "0")}`;

function opened(file: string): Database {
  const database = openDatabase(file);
  onTestFinished(() => {
    database.close();
  });
  return database;
}

/** A book as the first schema kept it, with one motor and an earlier state of it. */
function oldBook(file: string): void {
  const database = openDatabase(file);
  migrate(database, MIGRATIONS.slice(0, 1), at);
  const body = JSON.stringify(samples.motors);
  database
    .prepare(
      "INSERT INTO motors (id, name, body, revision, created_at, updated_at) VALUES (?, ?, ?, 2, ?, ?)",
    )
    .run("pane-motor", "Pane motor", body, TIME, TIME);
  database
    .prepare(
      "INSERT INTO revisions (collection, id, revision, body, created_at, at) VALUES (?, ?, 1, ?, ?, ?)",
    )
    .run("motors", "pane-motor", body, TIME, TIME);
  database.close();
}

const copiesIn = (folder: string): string[] => readdirSync(folder).filter((name) => name.endsWith(".bak"));

describe("a book of an older schema, opened", () => {
  it("keeps every record and every earlier state, and leaves a copy as it was", () => {
    const folder = freshFolder();
    const file = join(folder, "book.db");
    oldBook(file);
    const store = openStore(file, at);
    expect(store.collections.motors.get("pane-motor").data).toEqual(samples.motors);
    const states = store.collections.motors
      .revisions("pane-motor")
      .map((json) => JSON.parse(Buffer.from(json).toString()));
    expect(states.map(({ revision }) => revision)).toEqual([1, 2]);
    expect(idsOf(store.collections.motors.list({ limit: 5 }))).toEqual(["pane-motor"]);
    store.close();

    expect(copiesIn(folder)).toEqual([`book.db.20260301T080000Z-${BEFORE}.bak`]);
    const copy = new SQLite(join(folder, copiesIn(folder)[0]), { readonly: true });
    expect(copy.pragma("user_version", { simple: true })).toBe(1);
    expect(copy.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(copy.prepare("SELECT count(*) FROM motors").pluck().get()).toBe(1);
    copy.close();
  });

  it("with builds in it: keeps them and what they point to, and takes one without a skirt from then on", () => {
    const file = join(freshFolder(), "book.db");
    const database = openDatabase(file);
    migrate(database, MIGRATIONS.slice(0, 2), at);
    const part = (table: string, body: object) =>
      database
        .prepare(
          `INSERT INTO ${table} (id, name, body, revision, created_at, updated_at) VALUES ('one', 'One', ?, 1, ?, ?)`,
        )
        .run(JSON.stringify(body), TIME, TIME);
    for (const table of ["rotors", "motors", "packs", "skirts", "surfaces"] as const)
      part(table, samples[table]);
    const parts = { rotor: "one", motor: "one", pack: "one", skirt: "one", surface: "one" };
    const build = sampleBuild(parts);
    database
      .prepare(
        "INSERT INTO builds (id, name, rotor, motor, pack, skirt, surface, body, revision, created_at, updated_at) VALUES ('crawler', ?, 'one', 'one', 'one', 'one', 'one', ?, 3, ?, ?)",
      )
      .run(build.name, JSON.stringify(build), TIME, TIME);
    database.close();

    const store = openStore(file, at);
    expect(store.collections.builds.get("crawler")).toMatchObject({ revision: 3, data: build });
    expect(() => store.collections.skirts.remove("one", TIME)).toThrow(/used/);
    store.collections.builds.create({ ...build, skirt: null }, TIME);
    expect(idsOf(store.collections.builds.list({ limit: 5 }))).toHaveLength(2);
    store.close();
  });

  it("a second time at the latest schema, or for the first time at all: leaves no copy", () => {
    const folder = freshFolder();
    openStore(join(folder, "book.db"), at).close();
    openStore(join(folder, "book.db"), at).close();
    expect(copiesIn(folder)).toEqual([]);
  });

  it("by a migration that fails half-way: is as it was before", () => {
    const folder = freshFolder();
    const file = join(folder, "book.db");
    oldBook(file);
    const database = opened(file);
    const broken = {
      version: LATEST,
      name: "broken",
      sql: "CREATE TABLE half (x TEXT) STRICT; SELECT nothing_such;",
    };
    expect(() => migrate(database, [...MIGRATIONS.slice(0, 1), broken], at)).toThrow(/nothing_such/);
    expect(schemaVersion(database)).toBe(1);
    expect(database.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'half'").pluck().get()).toBe(0);
    expect(migrate(database, MIGRATIONS, at)).toBe(`book.db.20260301T080000Z-${BEFORE}-2.bak`);
    expect(schemaVersion(database)).toBe(LATEST);
  });

  it("by a program that is older than the book: refuses and changes nothing", () => {
    const file = join(freshFolder(), "book.db");
    const database = opened(file);
    migrate(database, MIGRATIONS, at);
    database.pragma(`user_version = ${LATEST + 3}`);
    expect(() => openStore(file, at)).toThrow(NewerBookError);
    expect(schemaVersion(database)).toBe(LATEST + 3);
  });
});

describe("the numbered migrations", () => {
  it("run from 1 without a gap", () => {
    expect(MIGRATIONS.map(({ version }) => version)).toEqual(MIGRATIONS.map((_, i) => i + 1));
  });
});

describe("the file", () => {
  it("is kept so that an acknowledged write outlives a power cut, and points only to what there is", () => {
    const database = opened(join(freshFolder(), "book.db"));
    migrate(database, MIGRATIONS, at);
    expect(database.pragma("journal_mode", { simple: true })).toBe("wal");
    expect(database.pragma("synchronous", { simple: true })).toBe(2);
    expect(database.pragma("foreign_keys", { simple: true })).toBe(1);
    const strict = database.prepare(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND strict = 0",
    );
    // SQLite's own: it makes them so.
    expect(strict.pluck().all()).toEqual(["sqlite_sequence", "sqlite_schema"]);
  });

  it("refuses a change or a removal of an earlier state, and a removal of a part in use, by itself", () => {
    const folder = freshFolder();
    oldBook(join(folder, "book.db"));
    const database = opened(join(folder, "book.db"));
    expect(() => database.exec("UPDATE revisions SET body = '{}'")).toThrow(/never changed/);
    expect(() => database.exec("DELETE FROM revisions")).toThrow(/never deleted/);
    database.exec(
      "INSERT INTO tests (id, name, kind, date, motor, body, revision, created_at, updated_at) VALUES ('t', '', 'motor', '2026-03-01', 'pane-motor', '{}', 1, '', '')",
    );
    expect(() => database.exec("DELETE FROM motors")).toThrow(/FOREIGN KEY/);
    migrate(database, MIGRATIONS, at);
    expect(() => database.exec("DELETE FROM records WHERE collection = 'motors'")).toThrow(/FOREIGN KEY/);
    database.exec(
      "DELETE FROM records WHERE collection = 'tests'; DELETE FROM records WHERE collection = 'motors'",
    );
    expect(database.prepare("SELECT count(*) FROM uses").pluck().get()).toBe(0);
  });
});
