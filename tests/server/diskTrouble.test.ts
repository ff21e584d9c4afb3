import { join } from "node:path";
import SQLite from "better-sqlite3";
import supertest from "supertest";
import { describe, expect, it, onTestFinished } from "vitest";
import { createApp } from "#server/app.ts";
import { openDatabase } from "#server/store/database.ts";
import { diskTroubleOf } from "#server/store/diskTrouble.ts";
import { LockedError } from "#server/store/patience.ts";
import { openStore, Store } from "#server/store/store.ts";
import { freshFolder, steppingClock } from "./support/book.ts";
import { samples } from "./support/records.ts";

const clock = steppingClock();

/** A server on a book whose file can't grow beyond what it has. */
function fullBook() {
  const file = join(freshFolder(), "book.db");
  openStore(file, clock()).close();
  const database = openDatabase(file);
  database.pragma(`max_page_count = ${database.pragma("page_count", { simple: true })}`);
  const store = new Store(database);
  onTestFinished(() => store.close());
  const log = (error: unknown) => {
    throw error;
  };
  return { store, database, api: supertest(createApp({ store, clock, log })) };
}

describe("a write that the disk has no room for", () => {
  it("gets 507 with words, leaves nothing behind, and is taken once there is room", async () => {
    const { api, database, store } = fullBook();
    const large = { ...samples.motors, note: "n".repeat(4000) };
    const answers = [];
    for (let i = 0; i < 40; i += 1) answers.push(await api.post("/api/v1/motors").send(large));
    const refused = answers.filter(({ status }) => status === 507);
    const stored = answers.filter(({ status }) => status === 201);
    expect(refused.length + stored.length).toBe(40);
    expect(refused.length).toBeGreaterThan(0);
    expect(refused[0].body.error).toMatchObject({ code: "disk-full", fields: [] });
    expect(refused[0].body.error.message).toMatch(/disk is full: nothing was stored/);
    expect(store.counts().motors).toBe(stored.length);
    expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
    database.pragma("max_page_count = 1000000");
    await api.post("/api/v1/motors").send(large).expect(201);
  });
});

describe("a write to a file that has become read-only", () => {
  it("gets 503 with words, and reads go on", async () => {
    const { api, database } = fullBook();
    database.pragma("query_only = ON");
    const { body } = await api.post("/api/v1/motors").send(samples.motors).expect(503);
    expect(body.error).toMatchObject({ code: "read-only" });
    await api.get("/api/v1/motors").expect(200);
  });
});

describe("diskTroubleOf", () => {
  it.each([
    ["SQLITE_FULL", "disk-full"],
    ["SQLITE_READONLY_DBMOVED", "read-only"],
    ["SQLITE_CORRUPT", null],
  ])("SQLite's %s: %s", (code, trouble) => {
    expect(diskTroubleOf(new SQLite.SqliteError("", code))).toBe(trouble);
  });

  it("the system's codes, and what is no such error", () => {
    expect(diskTroubleOf(Object.assign(new Error(), { code: "ENOSPC" }))).toBe("disk-full");
    expect(diskTroubleOf(new LockedError())).toBeNull();
    expect(diskTroubleOf("ENOSPC")).toBeNull();
  });
});
