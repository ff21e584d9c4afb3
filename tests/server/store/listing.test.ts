import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Database, openDatabase } from "#server/store/database.ts";
import { Joined } from "#server/store/joined.ts";
import { listSql } from "#server/store/listing.ts";
import { migrate } from "#server/store/migrate.ts";
import { MIGRATIONS } from "#server/store/migrations.ts";
import { COLLECTION_NAMES } from "#shared/model/collections.ts";
import { freshFolder, freshStore, idsOf } from "#tests/server/support/book.ts";

const STORED_TESTS = 100_000;

describe("a list page, with 100 000 tests stored", () => {
  let folder: string;
  let database: Database;

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "gripcurve-"));
    database = openDatabase(join(folder, "book.db"));
    migrate(database, MIGRATIONS, new Date(0));
    const insert = database.prepare(
      `INSERT INTO records (collection, id, name, kind, day, body, revision, created_at, updated_at)
       VALUES ('tests', ?, ?, ?, ?, '{"kind":"pull"}', 1, ?, ?)`,
    );
    database.transaction(() => {
      for (let i = 0; i < STORED_TESTS; i += 1) {
        const day = new Date(Date.UTC(2020, 0, 1 + (i % 2000))).toISOString();
        insert.run(`t-${i}`, `Test ${i}`, ["pull", "curve"][i % 2], day.slice(0, 10), day, day);
      }
    })();
  });

  afterAll(() => {
    database.close();
    rmSync(folder, { recursive: true });
  });

  const planOf = (sql: string): string => {
    const bound = Array.from({ length: sql.split("?").length - 1 }, () => "1");
    const steps = database.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...bound) as { detail: string }[];
    return steps.map(({ detail }) => detail).join("\n");
  };

  const filters = [
    ["no filter", { kind: false, uses: 0, text: false }],
    ["kind", { kind: true, uses: 0, text: false }],
    ["one part", { kind: false, uses: 1, text: false }],
    ["kind and part", { kind: true, uses: 1, text: false }],
    ["kind and two parts", { kind: true, uses: 2, text: false }],
    ["three parts and text", { kind: false, uses: 3, text: true }],
    ["out of use", { kind: false, uses: 0, text: false, withdrawn: true }],
    ["in use, kind and part", { kind: true, uses: 1, text: false, withdrawn: false }],
  ] as const;

  const pages = filters.flatMap(([what, by]) => [
    [`${what}, the first page`, by] as const,
    [`${what}, a later page`, { ...by, behind: true }] as const,
  ]);

  it.each(pages)("of tests by %s is read along an index, in order, without a scan or a sort", (_, by) => {
    const plan = planOf(listSql("tests", by));
    expect(plan).toMatch(/^SEARCH [ur] USING (COVERING )?INDEX/);
    expect(plan).not.toMatch(/SCAN|TEMP B-TREE/);
    const own = by.kind ? "records_by_kind" : "withdrawn" in by ? "records_withdrawn" : "records_in_order";
    const index = by.uses > 0 ? "uses_of_part" : own;
    expect(plan.split("\n")[0]).toContain(index);
  });

  it.each(COLLECTION_NAMES)(
    "of %s without a filter is read along an index, without a scan or a sort",
    (name) => {
      for (const behind of [false, true]) {
        const plan = planOf(listSql(name, { kind: false, uses: 0, text: true, behind }));
        expect(plan).toMatch(/^SEARCH r USING INDEX records_in_order/);
        expect(plan).not.toMatch(/SCAN|TEMP B-TREE/);
      }
    },
  );

  it("asked for by part of its title, finds the one test among them", () => {
    const rows = database
      .prepare(listSql("tests", { kind: false, uses: 0, text: true }))
      .all("tests", "%Test 99999%", 10);
    expect(rows).toHaveLength(1);
  });
});

describe("a list page", () => {
  it("of records that were entered in another order than the list's: holds them in the list's", () => {
    const store = freshStore();
    const days = Array.from({ length: 60 }, (_, i) => 1 + ((i * 37) % 60));
    const dates = days.map((day) => new Date(Date.UTC(2026, 0, day)).toISOString().slice(0, 10));
    const ids = dates.map(
      (date) => store.collections.tests.create({ kind: "pull", date }, `${date}T08:00:00.000Z`).record.id,
    );
    const inOrder = ids.map((id, i) => ({ id, day: days[i] })).sort((a, b) => b.day - a.day);
    const page = store.collections.tests.list({ limit: 50 });
    expect(idsOf(page)).toEqual(inOrder.slice(0, 50).map(({ id }) => id));
    const rest = store.collections.tests.list({ limit: 50, cursor: page.next ?? "" });
    expect(idsOf(rest)).toEqual(inOrder.slice(50).map(({ id }) => id));
    expect(rest.next).toBeNull();
  });

  it("of a collection that holds nothing: is empty, with no page behind it", () => {
    expect(freshStore().collections.tests.list({ limit: 5 })).toEqual({
      items: new Uint8Array(),
      next: null,
    });
  });
});

describe("the records of some rows as one", () => {
  it("with a row that isn't there: refused, not left out", () => {
    const database = openDatabase(join(freshFolder(), "book.db"));
    migrate(database, MIGRATIONS, new Date(0));
    expect(() => new Joined(database).records([1])).toThrow("Rows [1] were asked for, [] came.");
    database.close();
  });
});

describe("a list page of large records", () => {
  it("ends where it would grow beyond four million bytes, and goes on from there", () => {
    const store = freshStore();
    const at = "2026-03-01T08:00:00.000Z";
    const note = "n".repeat(900_000);
    const ids = Array.from(
      { length: 9 },
      () => store.collections.motors.create({ name: "M", note }, at).record.id,
    );
    const pages: string[][] = [];
    for (let cursor: string | undefined, more = true; more; ) {
      const page = store.collections.motors.list({ limit: 500, ...(cursor ? { cursor } : {}) });
      pages.push(idsOf(page));
      more = page.next !== null;
      cursor = page.next ?? undefined;
    }
    expect(pages.map(({ length }) => length)).toEqual([4, 4, 1]);
    expect(pages.flat().sort()).toEqual([...ids].sort());
  });

  it("whose first record alone is larger than that: holds it", () => {
    const store = freshStore();
    const note = "n".repeat(5_000_000);
    for (const name of ["A", "B"])
      store.collections.motors.create({ name, note }, "2026-03-01T08:00:00.000Z");
    const page = store.collections.motors.list({ limit: 5 });
    expect(idsOf(page)).toHaveLength(1);
    expect(page.next).not.toBeNull();
  });
});
