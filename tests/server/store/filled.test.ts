import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openDatabase } from "#server/store/database.ts";
import { migrate } from "#server/store/migrate.ts";
import { MIGRATIONS } from "#server/store/migrations.ts";
import { build } from "#shared/model/build.ts";
import { gear } from "#shared/model/parts/gear.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const [{ data: crawler }] = demoBook().builds;
const { ledger: _l, stacks: _s, places: _p, exchanges: _e, gear: _g, ...older } = crawler;

describe("a book of before builds had ledgers, stacks, places and exchanges", () => {
  it("is filled in as the schema fills in a new record, and what it said stays", () => {
    const folder = mkdtempSync(join(tmpdir(), "gripcurve-"));
    const database = openDatabase(join(folder, "book.db"));
    migrate(
      database,
      MIGRATIONS.filter(({ version }) => version < 9),
      new Date(0),
    );
    const insert = database.prepare(
      `INSERT INTO records (collection, id, name, kind, day, body, revision, created_at, updated_at)
       VALUES (?, ?, ?, '', '', ?, 1, '2026-01-01', '2026-01-01')`,
    );
    insert.run("builds", "old", older.name, JSON.stringify(older));
    insert.run("gears", "tyres", "Tyres", JSON.stringify({ name: "Tyres", note: "" }));
    migrate(database, MIGRATIONS, new Date(0));
    const body = (collection: string): unknown =>
      JSON.parse(
        String(database.prepare("SELECT body FROM records WHERE collection = ?").pluck().get(collection)),
      );
    expect(body("builds")).toEqual(build.parse(older));
    expect(body("gears")).toEqual(gear.parse({ name: "Tyres" }));
    database.close();
    rmSync(folder, { recursive: true });
  });
});
