import { describe, expect, it } from "vitest";
import { bookIn, closeBook } from "#server/threads/bookIn.ts";
import { motorBasis } from "#shared/book/motorBasis.ts";
import { addBook, type Book, freshBook } from "./support/api.ts";
import { samplePull, samples } from "./support/records.ts";

interface Listed {
  readonly id: string;
}
const idsOf = async ({ api }: Book, path: string): Promise<string[]> =>
  (await api.get(`/api/v1/${path}`).expect(200)).body.items.map(({ id }: Listed) => id);

/** A motor test that tells all of a motor. */
const motorTest = (motor: string) => ({
  kind: "motor",
  date: "2026-03-14",
  motor,
  resistance: { value: 0.35, unit: "Ω" },
  rows: [
    { voltage: 4, current: 0.2, rpm: 30000, noLoad: true },
    { voltage: 2, current: 0.15, rpm: 15100, noLoad: true },
    { voltage: 4, current: 3, rpm: 22000, noLoad: false },
    { voltage: 3, current: 2, rpm: 17400, noLoad: false },
  ].map(({ voltage, current, rpm, noLoad }) => ({
    voltage: { value: voltage, unit: "V" },
    current: { value: current, unit: "A" },
    speed: { value: rpm, unit: "rpm" },
    noLoad,
  })),
});

describe("a test that is struck out", () => {
  it("leaves the fits at once, stays in its list and among its revisions, and comes back", async () => {
    const book = freshBook();
    const { api, store } = book;
    const motor = (await api.post("/api/v1/motors").send(samples.motors)).body.id as string;
    const { body: test } = await api.post("/api/v1/tests").send(motorTest(motor)).expect(201);
    const basis = () => {
      const found = motorBasis(bookIn(store.file), motor)?.basis;
      closeBook();
      return found;
    };
    expect(basis()).toBe("measured");
    const struck = { ...test.data, struckOut: "clamp meter on the wrong lead" };
    await api.put(`/api/v1/tests/${test.id}`).set("If-Match", '"1"').send(struck).expect(200);
    expect(basis()).toBe("stated");
    expect(await idsOf(book, "tests")).toEqual([test.id]);
    expect(await idsOf(book, "tests?struckOut=true")).toEqual([test.id]);
    expect(await idsOf(book, "tests?struckOut=false")).toEqual([]);
    await api.put(`/api/v1/tests/${test.id}`).set("If-Match", '"2"').send(test.data).expect(200);
    expect(basis()).toBe("measured");
    expect(await idsOf(book, "tests?struckOut=true&kind=motor")).toEqual([]);
    const { items } = (await api.get(`/api/v1/tests/${test.id}/revisions`)).body;
    expect(items.map(({ data }: { data: { struckOut?: string } }) => data.struckOut)).toEqual([
      undefined,
      "clamp meter on the wrong lead",
      undefined,
    ]);
  });

  it("without a reason, or with one of blanks: refused by its field", async () => {
    const book = freshBook();
    const { pull } = await addBook(book);
    for (const struckOut of ["", "  ", true, "x".repeat(301)]) {
      const { body } = await book.api
        .put(`/api/v1/tests/${pull.id}`)
        .set("If-Match", '"1"')
        .send({ ...pull.data, struckOut })
        .expect(400);
      expect(body.error.fields[0].path).toBe("struckOut");
    }
  });

  it("may contradict itself and its parts; taken back, it may not", async () => {
    const book = freshBook();
    const { pull, parts } = await addBook(book);
    const put = (revision: number, change: object) =>
      book.api
        .put(`/api/v1/tests/${pull.id}`)
        .set("If-Match", `"${revision}"`)
        .send({ ...pull.data, ...change });
    const rows = [{ held: { value: 900, unit: "g" }, letGo: { value: 450, unit: "g" } }];
    await put(1, { rows }).expect(422);
    await put(1, { rows, struckOut: "read the wrong scale" }).expect(200);
    await put(2, { rows }).expect(422);
    const { id: rotor } = (await book.api.post("/api/v1/rotors").send(samples.rotors)).body;
    const other = samplePull({ ...parts, rotor }, { diameter: { value: 30, unit: "mm" } });
    await book.api.post("/api/v1/tests").send(other).expect(422);
    await book.api
      .post("/api/v1/tests")
      .send({ ...other, struckOut: "not that size" })
      .expect(201);
  });
});

describe("a part that is retired", () => {
  it("stays with what uses it, and is listed by itself", async () => {
    const book = freshBook();
    const { parts, build } = await addBook(book);
    const at = `/api/v1/motors/${parts.motor}`;
    const retired = { ...samples.motors, retired: "a magnet came loose" };
    await book.api.put(at).set("If-Match", '"1"').send(retired).expect(200);
    await book.api.post("/api/v1/motors").send(samples.motors).expect(201);
    expect(await idsOf(book, "motors?retired=true")).toEqual([parts.motor]);
    expect(await idsOf(book, "motors?retired=false")).toHaveLength(1);
    expect(await idsOf(book, "motors")).toHaveLength(2);
    expect(bookIn(book.store.file).motors).toHaveLength(2);
    closeBook();
    await book.api.get(`/api/v1/builds/${build.id}`).expect(200);
    await book.api.get("/api/v1/motors?struckOut=true").expect(400);
  });
});

describe("what was deleted", () => {
  it("is listed, the last first and page by page, and comes back as it was, one revision later", async () => {
    const book = freshBook();
    const { api } = book;
    const { pull, build, parts } = await addBook(book);
    const heavier = { ...build.data, vehicle: { ...build.data.vehicle, mass: 0.2 } };
    await api.put(`/api/v1/builds/${build.id}`).set("If-Match", '"1"').send(heavier).expect(200);
    await api.delete(`/api/v1/tests/${pull.id}`).expect(204);
    await api.delete(`/api/v1/builds/${build.id}`).expect(204);
    const { body: first, headers: said } = await api.get("/api/v1/deleted?limit=1").expect(200);
    expect(first.items).toEqual([
      {
        collection: "builds",
        id: build.id,
        revision: 2,
        name: "Side pane crawler",
        kind: null,
        date: null,
        deletedAt: expect.stringMatching(/^2026-03-01T/),
      },
    ]);
    const [, address] = /^<([^>]+)>; rel="next"$/.exec(said.link) ?? [];
    expect(new URL(address, "http://here").searchParams.get("cursor")).toBe(first.next);
    const { body: second } = await api.get(address).expect(200);
    expect(second).toMatchObject({ items: [{ id: pull.id, kind: "pull", date: "2026-03-14" }], next: null });

    const { body: back, headers } = await api.post(`/api/v1/builds/${build.id}/restore`).expect(200);
    expect(back).toMatchObject({ id: build.id, revision: 3, createdAt: build.createdAt, data: heavier });
    expect(headers.etag).toBe('"3"');
    expect((await api.get("/api/v1/deleted")).body.items).toHaveLength(1);
    expect((await api.get(`/api/v1/builds/${build.id}/revisions`)).body.items).toHaveLength(3);
    await api.delete(`/api/v1/motors/${parts.motor}`).expect(409);
  });

  it("but is there, or never was: can't come back", async () => {
    const { api } = freshBook();
    const { id } = (await api.post("/api/v1/motors").send(samples.motors)).body;
    const { body } = await api.post(`/api/v1/motors/${id}/restore`).expect(409);
    expect(body.error.code).toBe("not-deleted");
    await api.post("/api/v1/motors/no-such/restore").expect(404);
    await api.post(`/api/v1/packs/${id}/restore`).expect(404);
  });

  it("with a part that was deleted as well: waits for the part, which is named", async () => {
    const book = freshBook();
    const { api } = book;
    const { pull, build, parts } = await addBook(book);
    await api.delete(`/api/v1/tests/${pull.id}`).expect(204);
    await api.delete(`/api/v1/builds/${build.id}`).expect(204);
    await api.delete(`/api/v1/packs/${parts.pack}`).expect(204);
    const { body } = await api.post(`/api/v1/builds/${build.id}/restore`).expect(422);
    expect(body.error).toMatchObject({ code: "unknown-part", fields: [{ path: "pack" }] });
    expect((await api.get("/api/v1/deleted")).body.items).toHaveLength(3);
    await api.post(`/api/v1/packs/${parts.pack}/restore`).expect(200);
    await api.post(`/api/v1/builds/${build.id}/restore`).expect(200);
  });

  it("is told to whoever follows the book, going and coming back", async () => {
    const { api, store } = freshBook();
    const { id } = (await api.post("/api/v1/motors").send(samples.motors)).body;
    const told: (string | number | null)[][] = [];
    store.feed.subscribe({
      next: ({ change, revision }) => told.push([change, revision]),
      end: () => {},
    });
    await api.delete(`/api/v1/motors/${id}`).expect(204);
    await api.post(`/api/v1/motors/${id}/restore`).expect(200);
    expect(told).toEqual([
      ["deleted", 1],
      ["restored", 2],
    ]);
  });

  it("goes out with the archive and comes back in another book; of an archive that doesn't say when, by its last correction", async () => {
    const book = freshBook();
    const { id, createdAt } = (await book.api.post("/api/v1/motors").send(samples.motors)).body;
    await book.api.delete(`/api/v1/motors/${id}`).expect(204);
    const { body: sent } = await book.api.get("/api/v1/archive");
    const { items } = (await book.api.get("/api/v1/deleted")).body;
    expect(sent.deletions).toEqual([{ collection: "motors", id, deletedAt: items[0].deletedAt }]);
    expect(items[0].deletedAt > createdAt).toBe(true);
    const other = freshBook();
    await other.api.post("/api/v1/archive").send(sent).expect(201);
    expect((await other.api.get("/api/v1/deleted")).body.items).toEqual(items);
    const { deletions: _, ...earlier } = sent;
    const third = freshBook();
    await third.api
      .post("/api/v1/archive")
      .send({ ...earlier, version: 2 })
      .expect(201);
    expect((await third.api.get("/api/v1/deleted")).body.items).toEqual([
      { ...items[0], deletedAt: createdAt },
    ]);
    await third.api.post(`/api/v1/motors/${id}/restore`).expect(200);
  });
});
