import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { gunzipSync } from "node:zlib";
import SQLite from "better-sqlite3";
import { describe, expect, it, onTestFinished } from "vitest";
import { listBackups } from "#server/store/backups.ts";
import { bookText } from "#server/store/bookText.ts";
import { copyBeside } from "#server/store/copies.ts";
import type { Database } from "#server/store/database.ts";
import { MIGRATIONS } from "#server/store/migrations.ts";
import { openStore } from "#server/store/store.ts";
import { readBackup } from "#server/threads/backupBook.ts";
import { archive } from "#shared/model/api/book.ts";
import { COLLECTION_NAMES, type CollectionName } from "#shared/model/collections.ts";
import { freshFolder } from "#tests/server/support/book.ts";

const FOLDER = new URL("../fixtures/books/", import.meta.url).pathname;
const PACKED = readdirSync(FOLDER).filter((name) => name.endsWith(".gz"));
const schemaOf = (name: string): number => Number(/\d+/.exec(name)?.[0]);
const isLatest = (name: string): boolean => schemaOf(name) === MIGRATIONS.length;
/** From here on all records stand in one table. */
const ONE_TABLE = 5;
const at = new Date("2027-01-05T08:00:00Z");

interface RawRow {
  readonly collection: CollectionName;
  readonly id: string;
  readonly revision: number;
  readonly created_at: string;
  readonly body: string;
}

/** Records as they lie in the file, read without any of the program. */
function rawRecords(database: Database): RawRow[] {
  const columns = "id, revision, created_at, body";
  if ((database.pragma("user_version", { simple: true }) as number) >= ONE_TABLE)
    return database.prepare(`SELECT collection, ${columns} FROM records`).all() as RawRow[];
  const tables = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all();
  return COLLECTION_NAMES.filter((name) => tables.includes(name)).flatMap(
    (name) => database.prepare(`SELECT '${name}' AS collection, ${columns} FROM ${name}`).all() as RawRow[],
  );
}

const rawRevisions = (database: Database): RawRow[] =>
  database
    .prepare(
      "SELECT collection, id, revision, created_at, body FROM revisions ORDER BY collection, id, revision",
    )
    .all() as RawRow[];

function read<T>(file: string, what: (database: Database) => T): T {
  const database = new SQLite(file, { readonly: true });
  try {
    return what(database);
  } finally {
    database.close();
  }
}

/** A book of then in a folder of its own, what lay in it, and the same opened by the program of today. */
function opened(name: string) {
  const file = join(freshFolder(), "book.db");
  writeFileSync(file, gunzipSync(readFileSync(join(FOLDER, name))));
  const before = read(file, (database) => ({
    records: rawRecords(database),
    revisions: rawRevisions(database),
  }));
  const store = openStore(file, at);
  onTestFinished(() => store.close());
  return { file, before, store };
}

describe.each(PACKED)("the book %s of its time, opened by the program of today", (name) => {
  it("keeps every record, every earlier state and the moment of each", () => {
    const { before, store } = opened(name);
    expect(before.records.length).toBeGreaterThan(40);
    expect(before.revisions.length).toBe(3);
    const total = Object.values(store.counts()).reduce((sum, count) => sum + count, 0);
    expect(total).toBe(before.records.length);
    for (const { collection, id, revision, created_at, body } of before.records) {
      const record = store.collections[collection].get(id);
      expect(record).toMatchObject({ revision, createdAt: created_at, data: JSON.parse(body) });
    }
    const after = read(store.file, rawRevisions);
    expect(after).toEqual(before.revisions);
  });

  it("satisfies the schemas of today in every state", () => {
    const { file } = opened(name);
    const read = archive.parse(JSON.parse([...bookText(file, at.toISOString())].join("")));
    expect(read.records.builds.length).toBeGreaterThan(2);
  });

  it("is restored from its copy, what a rule of later would refuse included", () => {
    const { file, before } = opened(name);
    const { name: copy } = isLatest(name) ? { name: copyBeside(file, "by-hand", at) } : listBackups(file)[0];
    const { book } = readBackup(file, copy, at);
    onTestFinished(() => book.close());
    const count = Object.values(book.counts()).reduce((sum, each) => sum + each, 0);
    expect(count).toBe(before.records.length);
  });

  it("lists what was deleted, brings it back, and takes corrections", () => {
    const { store } = opened(name);
    const { items } = store.deletions.page(10);
    expect(items).toHaveLength(1);
    const [{ collection, id, revision }] = items;
    const { record } = store.collections[collection].restore(id, at.toISOString());
    expect(record.revision).toBe(revision + 1);
    const { tests } = store.collections;
    const corrected = tests.replace(id, { ...record.data, note: "Read again." }, at.toISOString(), () => {});
    expect(corrected.record.revision).toBe(revision + 2);
  });

  it("lies beside itself as it was, in a copy", () => {
    const { file, before } = opened(name);
    const copies = readdirSync(dirname(file)).filter((each) => each.endsWith(".bak"));
    expect(copies).toHaveLength(isLatest(name) ? 0 : 1);
    for (const copy of copies)
      read(join(dirname(file), copy), (database) => {
        expect(database.pragma("user_version", { simple: true })).toBe(schemaOf(name));
        expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
        expect(rawRecords(database)).toEqual(before.records);
      });
  });
});

describe("the books of schemas that landed", () => {
  it("are there of every one, the latest included", () => {
    const wanted = MIGRATIONS.slice(1).map(({ version }) => version);
    expect(PACKED.map(schemaOf)).toEqual(expect.arrayContaining(wanted));
  });
});
