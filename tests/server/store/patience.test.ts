import { join } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it, onTestFinished } from "vitest";
import { LockedError, patiently } from "#server/store/patience.ts";
import { freshBook } from "#tests/server/support/api.ts";
import { freshFolder, steppingClock } from "#tests/server/support/book.ts";
import { samples } from "#tests/server/support/records.ts";

/** A bench book, and another program that can lock its file. */
function lockableBook() {
  const file = join(freshFolder(), "book.db");
  const book = freshBook(steppingClock(), file);
  const other = new SQLite(file);
  onTestFinished(() => {
    other.close();
  });
  return { ...book, other };
}

describe("a write while another program holds the data file", () => {
  it("waits, while reads are answered, and is stored when the lock goes", async () => {
    const { api, other } = lockableBook();
    other.exec("BEGIN IMMEDIATE");
    let isStored = false;
    const write = api
      .post("/api/v1/motors")
      .send(samples.motors)
      .then((response) => {
        isStored = true;
        return response;
      });
    for (let i = 0; i < 5; i += 1) await api.get("/api/v1/bench").expect(200);
    expect(isStored).toBe(false);
    other.exec("ROLLBACK");
    expect((await write).status).toBe(201);
  });

  it("that never goes: 503 with words, nothing stored", async () => {
    const attempts: number[] = [];
    const locked = () => {
      attempts.push(1);
      throw new SQLite.SqliteError("database is locked", "SQLITE_BUSY");
    };
    await expect(patiently(locked, () => false, 30)).rejects.toThrow(LockedError);
    expect(attempts.length).toBeGreaterThan(1);
  });

  it("of one who has hung up: is not tried again", async () => {
    const attempts: number[] = [];
    const locked = () => {
      attempts.push(1);
      throw new SQLite.SqliteError("database is locked", "SQLITE_BUSY_SNAPSHOT");
    };
    await expect(patiently(locked, () => true)).rejects.toThrow(LockedError);
    expect(attempts).toHaveLength(1);
  });

  it("any other error: is thrown as it is, at once", async () => {
    const broken = () => {
      throw new SQLite.SqliteError("no such table", "SQLITE_ERROR");
    };
    await expect(patiently(broken)).rejects.toThrow("no such table");
  });
});
