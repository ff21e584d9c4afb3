import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it } from "vitest";
import type { Backup } from "#shared/model/api/book.ts";
import { addBook, type Book, freshBook } from "./support/api.ts";

const copiesOf = async ({ api }: Book): Promise<Backup[]> =>
  (await api.get("/api/v1/backups").expect(200)).body.items;

/** A book that was emptied: a copy with what it held lies beside it. */
async function emptied() {
  const book = freshBook();
  await addBook(book);
  const before = (await book.api.get("/api/v1/archive")).body;
  await book.api.post("/api/v1/bench/empty").expect(200);
  const [copy] = await copiesOf(book);
  return { book, before, copy, path: join(dirname(book.store.file), copy.name) };
}

describe("a copy beside the data file", () => {
  it("is listed with its moment and why it was kept, and says what it holds", async () => {
    const { book, copy, path } = await emptied();
    expect(copy).toMatchObject({ reason: "before-empty", bytes: readFileSync(path).length });
    expect(copy.at).toMatch(/^2026-03-01T08:00:\d\d\.000Z$/);
    const { body } = await book.api.get(`/api/v1/backups/${copy.name}`).expect(200);
    expect(body).toMatchObject({ name: copy.name, demo: false, counts: { builds: 1, tests: 1, motors: 1 } });
  });

  it("restored: gives the same book again, keeps what it replaced as a copy, and stays itself", async () => {
    const { book, before, copy, path } = await emptied();
    const bytes = readFileSync(path);
    await book.api.post("/api/v1/surfaces").send({ name: "Later pane", roughness: 1e-5 }).expect(201);
    const { body } = await book.api.post(`/api/v1/backups/${copy.name}/restore`).expect(201);
    expect(body).toMatchObject({
      counts: { builds: 1, tests: 1 },
      backup: expect.stringMatching(/before-restore\.bak$/),
    });
    const after = (await book.api.get("/api/v1/archive")).body;
    expect({ ...after, exportedAt: "" }).toEqual({ ...before, exportedAt: "" });
    expect(readFileSync(path).equals(bytes)).toBe(true);
    const kept = await book.api.get(`/api/v1/backups/${body.backup}`).expect(200);
    expect(kept.body.counts).toMatchObject({ surfaces: 1, builds: 0 });
  });

  it.each([
    ["cut short", (bytes: Buffer) => bytes.subarray(0, bytes.length / 2)],
    ["no database", () => Buffer.from("not a book")],
    ["empty", () => Buffer.alloc(0)],
    ["overwritten in its middle", (bytes: Buffer) => Buffer.from(bytes).fill(0x5a, 4096, 12288)],
  ])(
    "that is %s: is refused with the reason, by a look and by restoring, and nothing changes",
    async (_what, spoil) => {
      const { book, copy, path } = await emptied();
      const counts = book.store.counts();
      const files = readdirSync(dirname(path));
      writeFileSync(path, spoil(readFileSync(path)));
      for (const answer of [
        await book.api.get(`/api/v1/backups/${copy.name}`),
        await book.api.post(`/api/v1/backups/${copy.name}/restore`),
      ]) {
        expect(answer.status, answer.text).toBe(422);
        expect(answer.body.error.message).toMatch(/^The copy .* can't be used: .* Nothing was changed\.$/);
      }
      expect(book.store.counts()).toEqual(counts);
      expect(readdirSync(dirname(path))).toEqual(files);
    },
  );

  it("of a later version is refused by its schema", async () => {
    const { book, copy, path } = await emptied();
    const database = new SQLite(path);
    database.pragma("user_version = 999");
    database.close();
    const { body } = await book.api.post(`/api/v1/backups/${copy.name}/restore`).expect(422);
    expect(body.error.message).toMatch(/schema 999/);
  });

  it.each(["..%2F..%2Fetc%2Fpasswd", "book.db", "missing.bak", "book.db-wal"])(
    "by the name %s, which is none of the list: 404",
    async (name) => {
      const { book } = await emptied();
      await book.api.get(`/api/v1/backups/${name}`).expect(404);
      await book.api.post(`/api/v1/backups/${name}/restore`).expect(404);
    },
  );
});
