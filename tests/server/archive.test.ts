import { readdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import SQLite from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { bookText } from "#server/store/bookText.ts";
import { archive } from "#shared/model/api/book.ts";
import { addBook, freshBook } from "./support/api.ts";
import { freshFolder } from "./support/book.ts";
import { sampleCurve, samples } from "./support/records.ts";

/** A book with corrections and a deleted record in it. */
async function livedInBook() {
  const book = freshBook();
  const { parts, build } = await addBook(book);
  const heavier = { ...build.data, vehicle: { ...build.data.vehicle, mass: 0.2 } };
  await book.api.put(`/api/v1/builds/${build.id}`).set("If-Match", '"1"').send(heavier).expect(200);
  const spare = await book.api.post("/api/v1/motors").send(samples.motors);
  await book.api.delete(`/api/v1/motors/${spare.body.id}`).expect(204);
  return { book, parts, build };
}

describe("the archive of a whole book", () => {
  it("taken into an empty book: gives the same archive again, earlier states included", async () => {
    const { book, build } = await livedInBook();
    const { body: sent, headers } = await book.api.get("/api/v1/archive").expect(200);
    expect(headers["content-disposition"]).toMatch(/gripcurve-2026-03-01\.json/);
    expect(archive.parse(sent)).toEqual(sent);
    expect(sent.revisions.builds).toHaveLength(1);
    expect(sent.revisions.motors).toHaveLength(1);

    const other = freshBook();
    const taken = await other.api.post("/api/v1/archive").send(sent).expect(201);
    expect(taken.body).toMatchObject({ demo: false, counts: { builds: 1, tests: 1, motors: 1 } });
    const { body: again } = await other.api.get("/api/v1/archive");
    expect({ ...again, exportedAt: "" }).toEqual({ ...sent, exportedAt: "" });

    const read = await other.api.get(`/api/v1/builds/${build.id}`).expect(200);
    expect(read.headers.etag).toBe('"2"');
    const next = await other.api
      .put(`/api/v1/builds/${build.id}`)
      .set("If-Match", '"2"')
      .send(read.body.data);
    expect(next.body.revision).toBe(3);
  });

  it("into a book that holds something: 409, unless it is to be replaced, which keeps a copy", async () => {
    const { book } = await livedInBook();
    const { body: sent } = await book.api.get("/api/v1/archive");
    const other = freshBook();
    await other.api.post("/api/v1/surfaces").send(samples.surfaces).expect(201);
    const refused = await other.api.post("/api/v1/archive").send(sent).expect(409);
    expect(refused.body.error.code).toBe("not-empty");
    expect(other.store.counts()).toMatchObject({ surfaces: 1, builds: 0 });
    const { body } = await other.api.post("/api/v1/archive?replace=true").send(sent).expect(201);
    expect(body.backup).toMatch(/before-import\.bak$/);
    const { body: again } = await other.api.get("/api/v1/archive");
    expect(again.records).toEqual(sent.records);
  });

  it("with one record that its schema refuses, a part that is missing, an id twice: named, and nothing is taken in", async () => {
    const { book, parts } = await livedInBook();
    const { body: sent } = await book.api.get("/api/v1/archive");
    const { api, store } = freshBook();
    const fieldsOf = async (change: (changedBook: typeof sent) => void, status: number) => {
      const changedBook = structuredClone(sent);
      change(changedBook);
      const { body } = await api.post("/api/v1/archive").send(changedBook).expect(status);
      return body.error.fields.map(({ path }: { path: string }) => path);
    };
    const wrongUnit = (changedBook: typeof sent) => {
      changedBook.records.tests[0].data.rows[0].held.unit = "lightyear";
    };
    expect(await fieldsOf(wrongUnit, 400)).toEqual(["records.tests.0.data.rows.0.held.unit"]);
    const noSkirt = (changedBook: typeof sent) => {
      changedBook.records.skirts = [];
    };
    expect(await fieldsOf(noSkirt, 422)).toEqual([
      "records.tests.0.data.skirt",
      "records.builds.0.data.skirt",
      "revisions.builds.0.data.skirt",
    ]);
    const twice = (changedBook: typeof sent) => {
      changedBook.records.packs.push(changedBook.records.packs[0]);
    };
    expect(await fieldsOf(twice, 422)).toEqual(["records.packs.1.id"]);
    const twoPasts = (changedBook: typeof sent) => {
      changedBook.revisions.builds[0].revision = 2;
    };
    expect(await fieldsOf(twoPasts, 422)).toEqual(["revisions.builds.0.revision"]);
    expect(store.isEmpty()).toBe(true);
    expect(parts.skirt).toBeTruthy();
  });

  it("that contradicts itself: the place named, nothing taken in", async () => {
    const { book } = await livedInBook();
    const { body: sent } = await book.api.get("/api/v1/archive");
    const { api, store } = freshBook();
    const refused = async (change: (changedBook: typeof sent) => void, status = 422) => {
      const changedBook = structuredClone(sent);
      change(changedBook);
      const { body } = await api.post("/api/v1/archive").send(changedBook).expect(status);
      return body.error.fields.map(({ path }: { path: string }) => path);
    };
    const later = await refused((changed) => {
      changed.revisions.builds[0].revision = 7;
    });
    expect(later).toEqual(["revisions.builds.0.revision"]);
    const beyond = await refused((changed) => {
      changed.records.motors[0].revision = 2 ** 53 - 1;
    }, 400);
    expect(beyond).toEqual(["records.motors.0.revision"]);
    const neverThere = await refused((changed) => {
      changed.revisions.builds[0].data.motor = "no-such-motor";
    });
    expect(neverThere).toEqual(["revisions.builds.0.data.motor"]);
    const propeller = await refused((changed) => {
      changed.records.rotors[0].data.kind = "propeller";
      changed.records.tests.push({
        ...changed.records.tests[0],
        id: "a-curve",
        data: sampleCurve(changed.records.rotors[0].id),
      });
    });
    expect(propeller).toEqual(["records.tests.1.data.rotor"]);
    const typo = await refused((changed) => {
      changed.records.motors[0].data.uncertainty = { kw: 100 };
      changed.records.packs[0].data.estimated = ["cell.capcity"];
      changed.records.builds[0].data.uncertainty = { "vehicle.mas": 1 };
    }, 400);
    expect(typo).toEqual([
      "records.motors.0.data.uncertainty.kw",
      "records.packs.0.data.estimated.0",
      "records.builds.0.data.uncertainty.vehicle.mas",
    ]);
    expect(store.isEmpty()).toBe(true);
  });

  it("with an earlier state that points to a part deleted since: is taken in", async () => {
    const { book, parts, build } = await livedInBook();
    const { id } = (await book.api.post("/api/v1/surfaces").send(samples.surfaces)).body;
    const path = `/api/v1/builds/${build.id}`;
    const { data } = (await book.api.get(path)).body;
    await book.api
      .put(path)
      .set("If-Match", '"2"')
      .send({ ...data, surface: id })
      .expect(200);
    await book.api
      .put(path)
      .set("If-Match", '"3"')
      .send({ ...data, surface: parts.surface })
      .expect(200);
    await book.api.delete(`/api/v1/surfaces/${id}`).expect(204);
    const { body: sent } = await book.api.get("/api/v1/archive");
    await freshBook().api.post("/api/v1/archive").send(sent).expect(201);
  });

  it("larger than other bodies may be: taken", async () => {
    const { book } = await livedInBook();
    const { body: sent } = await book.api.get("/api/v1/archive");
    const [test] = sent.records.tests;
    const note = "n".repeat(3900);
    sent.records.tests = Array.from({ length: 400 }, (_, i) => ({
      ...test,
      id: `t-${i}`,
      data: { ...test.data, note },
    }));
    sent.revisions.tests = [];
    expect(JSON.stringify(sent).length).toBeGreaterThan(1_500_000);
    await freshBook().api.post("/api/v1/archive").send(sent).expect(201);
  });
});

describe("the copy of the database file", () => {
  it("taken while the server runs: a whole database with every record", async () => {
    const { book } = await livedInBook();
    const { body, headers } = await book.api
      .get("/api/v1/backup")
      .buffer(true)
      .responseType("blob")
      .expect(200);
    expect(headers["content-disposition"]).toMatch(/gripcurve-2026-03-01\.db/);
    const file = join(freshFolder(), "copy.db");
    writeFileSync(file, body);
    const copy = new SQLite(file, { readonly: true });
    expect(copy.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(copy.prepare("SELECT count(*) FROM records WHERE collection = 'builds'").pluck().get()).toBe(1);
    expect(copy.prepare("SELECT count(*) FROM revisions").pluck().get()).toBe(2);
    copy.close();
  });
});

describe("an empty bench", () => {
  it("leaves nothing in the book, and a copy of what was there beside the file", async () => {
    const { book } = await livedInBook();
    const { body } = await book.api.post("/api/v1/bench/empty").expect(200);
    expect(body.demo).toBe(false);
    expect(Object.values(body.counts).every((count) => count === 0)).toBe(true);
    expect((await book.api.get("/api/v1/archive")).body.revisions.builds).toEqual([]);
    const folder = dirname(book.store.file);
    expect(readdirSync(folder)).toContain(body.backup);
    const copy = new SQLite(join(folder, body.backup), { readonly: true });
    expect(copy.prepare("SELECT count(*) FROM records WHERE collection = 'builds'").pluck().get()).toBe(1);
    copy.close();
  });
});

describe("the archive, while the book is read and written", () => {
  it("is the book as it was when the first piece was asked for", () => {
    const { store } = freshBook();
    const at = "2026-03-01T08:00:00.000Z";
    const names = Array.from({ length: 400 }, (_, i) => `Motor ${i} ${"x".repeat(90)}`);
    for (const name of names) store.collections.motors.create({ ...samples.motors, name }, at);
    const pieces = bookText(store.file, at);
    const first = pieces.next();
    expect(first.done).toBe(false);
    store.collections.motors.create({ ...samples.motors, name: "Later" }, at);
    const text = String(first.value) + [...pieces].join("");
    const { records } = archive.parse(JSON.parse(text));
    expect(records.motors.map(({ data }) => (data as { name: string }).name).sort()).toEqual(
      [...names].sort(),
    );
  });

  it("goes out in pieces of some 64 kB, however large the book is", () => {
    const { store } = freshBook();
    const at = "2026-03-01T08:00:00.000Z";
    for (let i = 0; i < 300; i++)
      store.collections.motors.create({ ...samples.motors, note: "n".repeat(3000) }, at);
    const lengths = [...bookText(store.file, at)].map(({ length }) => length);
    expect(lengths.length).toBeGreaterThan(10);
    expect(Math.max(...lengths)).toBeLessThan(80_000);
  });

  it("taken in through a connection of its own: its listeners are told once that it was loaded", async () => {
    const book = freshBook();
    await addBook(book);
    const { body: whole } = await book.api.get("/api/v1/archive");
    const told: string[] = [];
    book.store.feed.subscribe({ next: ({ change }) => told.push(change), end: () => {} });
    await book.api.post("/api/v1/archive?replace=true").send(whole).expect(201);
    book.store.lookForOthers();
    expect(told).toEqual(["loaded"]);
  });
});
