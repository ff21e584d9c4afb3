import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Database, openDatabase } from "#server/store/database.ts";
import { listSql } from "#server/store/listing.ts";
import { migrate } from "#server/store/migrate.ts";
import { MIGRATIONS } from "#server/store/migrations.ts";
import { COLLECTION_NAMES } from "#shared/model/record.ts";

const STORED_TESTS = 100_000;

describe("a list page, with 100 000 tests stored", () => {
  let folder: string;
  let database: Database;

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "gripcurve-"));
    database = openDatabase(join(folder, "book.db"));
    migrate(database, MIGRATIONS, new Date(0));
    const insert = database.prepare(
      `INSERT INTO tests (id, name, kind, date, body, revision, created_at, updated_at)
       VALUES (?, ?, ?, ?, '{"kind":"pull"}', 1, ?, ?)`,
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
    [],
    ["kind"],
    ["rotor"],
    ["motor"],
    ["pack"],
    ["skirt"],
    ["surface"],
    ["kind", "rotor"],
    ["kind", "skirt", "surface"],
  ];

  it.each(filters)(
    "of tests by %s is read along an index, in order, without a scan or a sort",
    (...equal) => {
      const plan = planOf(listSql("tests", equal, false));
      expect(plan).toMatch(/SEARCH tests USING INDEX/);
      expect(plan).not.toMatch(/SCAN|TEMP B-TREE/);
    },
  );

  it.each(COLLECTION_NAMES)(
    "of %s without a filter is read along an index, without a scan or a sort",
    (name) => {
      const plan = planOf(listSql(name, [], true));
      expect(plan).toMatch(new RegExp(`SEARCH ${name} USING INDEX`));
      expect(plan).not.toMatch(/SCAN|TEMP B-TREE/);
    },
  );

  it("asked for by part of its title, finds the one test among them", () => {
    const rows = database.prepare(listSql("tests", [], true)).all("~", "~", "~", "%Test 99999%", 10);
    expect(rows).toHaveLength(1);
  });
});
