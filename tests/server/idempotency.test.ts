import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { addParts, type Book, freshBook } from "./support/api.ts";
import { freshFolder, steppingClock } from "./support/book.ts";
import { sampleCurve, samples } from "./support/records.ts";

const MOTORS = "/api/v1/motors";
const KEY = "8e03978e-40d5-43e8-bc93-6894a57f9324";

const add = ({ api }: Book, key: string, body: object = samples.motors) =>
  api.post(MOTORS).set("Idempotency-Key", key).send(body);
const count = async ({ api }: Book) => (await api.get("/api/v1/bench")).body.counts.motors;

/** A clock that is set by hand. */
function setClock() {
  let now = Date.parse("2026-03-01T08:00:00Z");
  return { clock: () => new Date(now), pass: (days: number) => (now += days * 86_400_000) };
}

describe("a record added under an Idempotency-Key", () => {
  it("sent again: adds nothing, and gets the same answer, address and ETag included", async () => {
    const book = freshBook();
    const told: string[] = [];
    book.store.feed.subscribe({ next: ({ change }) => told.push(change), end: () => {} });
    const first = await add(book, KEY).expect(201);
    const again = await add(book, `"${KEY}"`).expect(201);
    expect(again.body).toEqual(first.body);
    expect(again.headers.location).toBe(first.headers.location);
    expect(again.headers.etag).toBe(first.headers.etag);
    expect(await count(book)).toBe(1);
    expect(told).toEqual(["created"]);
  });

  it("sent again after it was corrected, or removed: gets the answer of then", async () => {
    const book = freshBook();
    const first = await add(book, KEY).expect(201);
    const at = `${MOTORS}/${first.body.id}`;
    await book.api
      .put(at)
      .set("If-Match", '"1"')
      .send({ ...samples.motors, kv: 7650 })
      .expect(200);
    expect((await add(book, KEY).expect(201)).body).toEqual(first.body);
    await book.api.delete(at).expect(204);
    expect((await add(book, KEY).expect(201)).body).toEqual(first.body);
    expect(await count(book)).toBe(0);
  });

  it("sent at once ten times: is added once", async () => {
    const book = freshBook();
    const all = await Promise.all(Array.from({ length: 10 }, () => add(book, KEY)));
    expect(new Set(all.map(({ body }) => body.id)).size).toBe(1);
    expect(await count(book)).toBe(1);
  });

  it("of another server on the same file, or after a new start: is known there too", async () => {
    const file = join(freshFolder(), "book.db");
    const [one, other] = [freshBook(steppingClock(), file), freshBook(steppingClock(), file)];
    const first = await add(one, KEY).expect(201);
    expect((await add(other, KEY).expect(201)).body.id).toBe(first.body.id);
  });

  it("with other data, or to another collection: 422, nothing added", async () => {
    const book = freshBook();
    const { rotor } = await addParts(book);
    await add(book, KEY).expect(201);
    const { body } = await add(book, KEY, { ...samples.motors, kv: 1 }).expect(422);
    expect(body.error.code).toBe("key-reused");
    const test = book.api.post("/api/v1/tests").set("Idempotency-Key", KEY).send(sampleCurve(rotor));
    await test.expect(422);
    expect(await count(book)).toBe(2);
  });

  it("that was refused: is not kept, so that it can be put right", async () => {
    const book = freshBook();
    await add(book, KEY, { kv: 1 }).expect(400);
    await add(book, KEY).expect(201);
  });

  it("is kept for a week, and no longer", async () => {
    const { clock, pass } = setClock();
    const book = freshBook(clock);
    const first = await add(book, KEY).expect(201);
    pass(6.9);
    expect((await add(book, KEY).expect(201)).body.id).toBe(first.body.id);
    pass(0.2);
    expect((await add(book, KEY).expect(201)).body.id).not.toBe(first.body.id);
    expect(await count(book)).toBe(2);
  });

  it("before the book was emptied: is forgotten with it", async () => {
    const book = freshBook();
    await add(book, KEY).expect(201);
    await book.api.post("/api/v1/bench/empty").expect(200);
    await add(book, KEY).expect(201);
    expect(await count(book)).toBe(1);
  });

  it.each(["", '""', "two words", "k".repeat(201), 'a"b'])("%j: is no key, 400", async (key) => {
    const { body } = await add(freshBook(), key).expect(400);
    expect(body.error.fields[0].path).toBe("Idempotency-Key");
  });

  it("without a key: each request adds one", async () => {
    const book = freshBook();
    for (let i = 0; i < 2; i++) await book.api.post(MOTORS).send(samples.motors).expect(201);
    expect(await count(book)).toBe(2);
  });
});
