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
    expect([first, again].map(({ headers }) => headers["idempotency-replayed"])).toEqual([undefined, "true"]);
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

/** A motor in the book, and each write to it as a request under a key. */
async function bookWithMotor() {
  const book = freshBook();
  const told: string[] = [];
  book.store.feed.subscribe({ next: ({ change }) => told.push(change), end: () => {} });
  const { body } = await book.api.post(MOTORS).send(samples.motors).expect(201);
  const at = `${MOTORS}/${body.id}`;
  const sent = (kv: number, key = KEY) =>
    book.api
      .put(at)
      .set({ "If-Match": '"1"', "Idempotency-Key": key })
      .send({ ...samples.motors, kv });
  const removed = (key = KEY) => book.api.delete(at).set("Idempotency-Key", key);
  const restored = (key = KEY) => book.api.post(`${at}/restore`).set("Idempotency-Key", key);
  return { book, told, at, sent, removed, restored };
}

describe("a correction sent again under its Idempotency-Key", () => {
  it("whose revision has moved on by it: gets the same answer, and makes no other revision", async () => {
    const { book, told, at, sent } = await bookWithMotor();
    const first = await sent(7650).expect(200);
    const again = await sent(7650).expect(200);
    expect(again.body).toEqual(first.body);
    expect(again.headers).toMatchObject({ etag: '"2"', "idempotency-replayed": "true" });
    expect((await book.api.get(`${at}/revisions`)).body.items).toHaveLength(2);
    expect(told).toEqual(["created", "replaced"]);
  });

  it("after another correction, and after a removal: gets the answer of then", async () => {
    const { book, at, sent } = await bookWithMotor();
    const first = await sent(7650).expect(200);
    await book.api.put(at).set("If-Match", '"2"').send(samples.motors).expect(200);
    expect((await sent(7650).expect(200)).body).toEqual(first.body);
    await book.api.delete(at).expect(204);
    expect((await sent(7650).expect(200)).body).toEqual(first.body);
  });

  it("with other data, for another record, or as an addition: 422 in words, nothing changes", async () => {
    const { book, at, sent } = await bookWithMotor();
    await sent(7650).expect(200);
    const { body } = await sent(7000).expect(422);
    expect(body).toMatchObject({ status: 422, error: { code: "key-reused" } });
    expect(body.detail).toMatch(/came with another request before.* Choose a new key/);
    const other = await book.api.post(MOTORS).send(samples.motors).expect(201);
    await book.api
      .put(`${MOTORS}/${other.body.id}`)
      .set({ "If-Match": '"1"', "Idempotency-Key": KEY })
      .send({ ...samples.motors, kv: 7650 })
      .expect(422);
    await add(book, KEY, { ...samples.motors, kv: 7650 }).expect(422);
    expect((await book.api.get(at)).body.revision).toBe(2);
    expect(await count(book)).toBe(2);
  });

  it("that met a changed record: is not kept, so that it can be sent with the revision that is there", async () => {
    const { book, at, sent } = await bookWithMotor();
    await sent(7000, "first").expect(200);
    await sent(7650).expect(412);
    await book.api
      .put(at)
      .set({ "If-Match": '"2"', "Idempotency-Key": KEY })
      .send({ ...samples.motors, kv: 7650 })
      .expect(200);
  });
});

describe("a removal, and its taking back, sent again under their Idempotency-Keys", () => {
  it("get the same answers, and neither happens twice", async () => {
    const { book, told, at, removed, restored } = await bookWithMotor();
    await removed().expect(204);
    const again = await removed().expect(204);
    expect(again.headers["idempotency-replayed"]).toBe("true");
    const back = await restored("back").expect(200);
    expect((await restored("back").expect(200)).body).toEqual(back.body);
    expect(told).toEqual(["created", "deleted", "restored"]);
    // The removal that is sent once more on its way takes nothing away that came back since.
    await removed().expect(204);
    await book.api.get(at).expect(200);
  });

  it("under a key of the other: 422, nothing changes", async () => {
    const { book, at, removed, restored } = await bookWithMotor();
    await removed().expect(204);
    await restored().expect(422);
    await book.api.get(at).expect(404);
  });

  it("under what is no key: 400", async () => {
    const { book, at, removed } = await bookWithMotor();
    await removed('"two words"').expect(400);
    await book.api.get(at).expect(200);
  });
});
