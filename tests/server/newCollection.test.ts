import { join } from "node:path";
import supertest from "supertest";
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from "vitest";
import { z } from "zod";
import { freshFolder, steppingClock } from "./support/book.ts";
import { samples } from "./support/records.ts";

/** "ladders" stand in the table of collections, with a schema, and nowhere else. */
function addLadders(): void {
  vi.doMock("#shared/model/collections.ts", async (original) => {
    const table = await original<typeof import("#shared/model/collections.ts")>();
    const COLLECTION_WORDS = { ...table.COLLECTION_WORDS, ladders: "ladder" };
    const COLLECTION_NAMES = Object.keys(COLLECTION_WORDS);
    const byCollection = (make: (name: string) => unknown) =>
      Object.fromEntries(COLLECTION_NAMES.map((name) => [name, make(name)]));
    return { ...table, COLLECTION_WORDS, COLLECTION_NAMES, byCollection };
  });
  vi.doMock("#shared/model/schemas.ts", async (original) => {
    const { COLLECTIONS } = await original<typeof import("#shared/model/schemas.ts")>();
    const { reference } = await import("#shared/model/reference.ts");
    const rung = z.strictObject({ motor: reference("motors").nullable().default(null).describe("its own") });
    const ladders = z.strictObject({ name: z.string(), rotor: reference("rotors"), rungs: z.array(rung) });
    return { COLLECTIONS: { ...COLLECTIONS, ladders } };
  });
}

async function freshServer() {
  const { createApp } = await import("#server/app.ts");
  const { openStore } = await import("#server/store/store.ts");
  const clock = steppingClock();
  const store = openStore(join(freshFolder(), "book.db"), clock());
  onTestFinished(() => store.close());
  return { store, api: supertest(createApp({ store, clock })) };
}

/** A ladder with a rotor, and motors on two of three rungs. */
async function addLadder(api: Awaited<ReturnType<typeof freshServer>>["api"]) {
  const rotor = (await api.post("/api/v1/rotors").send(samples.rotors)).body.id as string;
  const motor = (await api.post("/api/v1/motors").send(samples.motors)).body.id as string;
  const data = { name: "Long one", rotor, rungs: [{ motor }, {}, { motor }] };
  const ladder = await api.post("/api/v1/ladders").send(data).expect(201);
  return { rotor, motor, data, id: ladder.body.id as string };
}

describe("a collection that is added to the table alone", () => {
  beforeAll(() => {
    vi.resetModules();
    addLadders();
  });
  afterAll(() => {
    vi.doUnmock("#shared/model/collections.ts");
    vi.doUnmock("#shared/model/schemas.ts");
    vi.resetModules();
  });

  it("is stored, corrected, listed and counted, by the parts that it points to as well", async () => {
    const { api } = await freshServer();
    const { id, rotor, data } = await addLadder(api);
    const path = `/api/v1/ladders/${id}`;
    await api
      .put(path)
      .set("If-Match", '"1"')
      .send({ ...data, name: "Longer" })
      .expect(200);
    expect((await api.get(`${path}/revisions`)).body.items).toHaveLength(2);
    expect((await api.get("/api/v1/bench")).body.counts.ladders).toBe(1);
    const named = async (query: string) =>
      (await api.get(`/api/v1/ladders?${query}`).expect(200)).body.items.map(
        (item: { id: string }) => item.id,
      );
    expect(await named(`rotor=${rotor}`)).toEqual([id]);
    expect(await named("q=longer")).toEqual([id]);
    expect(await named("motor=another")).toEqual([]);
    await api.get("/api/v1/ladders?pack=one").expect(400);
  });

  it("guards what it points to, at any depth, and refuses what isn't there by its place", async () => {
    const { api } = await freshServer();
    const { id, motor, data } = await addLadder(api);
    const { body } = await api.delete(`/api/v1/motors/${motor}`).expect(409);
    expect(body.error.message).toContain('the ladder "Long one"');
    expect(body.error.fields).toEqual([{ path: `ladders.${id}`, message: "Long one" }]);
    const wrong = await api
      .post("/api/v1/ladders")
      .send({ ...data, rungs: [{}, { motor: "gone" }] })
      .expect(422);
    expect(wrong.body.error.fields[0].path).toBe("rungs.1.motor");
    await api.delete(`/api/v1/ladders/${id}`).expect(204);
    await api.delete(`/api/v1/motors/${motor}`).expect(204);
  });

  it("goes out with the archive and comes in with it; an archive from before has none", async () => {
    const { api } = await freshServer();
    const { id } = await addLadder(api);
    const { body: sent } = await api.get("/api/v1/archive").expect(200);
    expect(sent.records.ladders).toHaveLength(1);
    const other = await freshServer();
    await other.api.post("/api/v1/archive").send(sent).expect(201);
    expect((await other.api.get(`/api/v1/ladders/${id}`)).body.data.name).toBe("Long one");
    const { ladders, ...before } = sent.records;
    const { ladders: _, ...past } = sent.revisions;
    const third = await freshServer();
    await third.api
      .post("/api/v1/archive")
      .send({ ...sent, records: before, revisions: past })
      .expect(201);
    expect(third.store.counts()).toMatchObject({ motors: 1, ladders: 0 });
    expect(ladders).toHaveLength(1);
  });

  it("is documented under its own name", async () => {
    const { api } = await freshServer();
    const { body } = await api.get("/api/v1/openapi.json").expect(200);
    expect(Object.keys(body.paths)).toContain("/ladders/{id}/revisions");
    expect(body.components.schemas.Ladder.properties.rotor.description).toBe("identifier of a stored rotor");
  });

  it("is in the book that the client reads", async () => {
    const { api } = await freshServer();
    const { id } = await addLadder(api);
    vi.stubGlobal("fetch", async (path: string) => {
      const { status, text } = await api.get(path);
      return new Response(text, { status, headers: { "Content-Type": "application/json" } });
    });
    const { currentBook, reload } = await import("#client/state/book.ts");
    await reload();
    vi.unstubAllGlobals();
    expect(currentBook.value).toMatchObject({ ladders: [{ id }], rotors: [{}], builds: [] });
  });
});
