import { join } from "node:path";
import SQLite from "better-sqlite3";
import supertest from "supertest";
import { describe, expect, it } from "vitest";
import { createApp } from "#server/app.ts";
import { loadDemo } from "#server/demo.ts";
import { openStore } from "#server/store/store.ts";
import { ownThread } from "#server/threads/ownThread.ts";
import type { Threads } from "#server/threads/threads.ts";
import { foretoldAfterwards, type RecordEntry, trackRecord } from "#shared/model/api/record.ts";
import { addParts, freshBook } from "./support/api.ts";
import { freshFolder } from "./support/book.ts";
import { samplePull } from "./support/records.ts";

const NOW = "2026-03-01T08:00:00Z";

function demoServer() {
  const book = freshBook();
  loadDemo(book.store, new Date(NOW));
  return book;
}

type Api = ReturnType<typeof freshBook>["api"];

const recordOf = async (api: Api) => trackRecord.parse((await api.get("/api/v1/record").expect(200)).body);

/** A pull with the demo's parts, the day's own. */
async function pullOfDemo(api: Api, change: object = {}) {
  const { items } = (await api.get("/api/v1/tests?kind=pull&limit=1")).body;
  const { data } = items[0];
  const rows = [{ held: { value: 800, unit: "g" }, letGo: { value: 900, unit: "g" } }];
  return { ...data, title: "new", date: "2026-03-01", rows, ...change };
}

/** That pull, logged. */
async function loggedPull(api: Api) {
  const sent = await pullOfDemo(api);
  return (await api.post("/api/v1/tests").send(sent).expect(201)).body;
}

const entriesOf = async (api: Api, id: string) =>
  (await recordOf(api)).entries.filter(({ test }) => test === id);

describe("a prediction that is kept with a test", () => {
  it("is made as the pull is logged, and stays when other tests come", async () => {
    const { api } = demoServer();
    const logged = await loggedPull(api);
    const [entry] = await entriesOf(api, logged.id);
    expect(entry).toMatchObject({ figure: "pull", basis: "then", row: 0, chance: null, held: null });
    const { p5, p50, p95, measured } = entry;
    if (p5 === null || p50 === null || p95 === null || !measured) throw new Error("no band");
    expect(p5).toBeLessThan(p50);
    expect(p50).toBeLessThan(p95);
    expect(measured.low).toBeLessThan(measured.high ?? 0);
    expect(entry.inside).toBe(measured.low <= p95 && (measured.high ?? 0) >= p5);
    // ten pulls more that say something else altogether
    const rows = Array.from({ length: 10 }, () => ({
      held: { value: 300, unit: "g" },
      letGo: { value: 310, unit: "g" },
    }));
    await api
      .post("/api/v1/tests")
      .send(await pullOfDemo(api, { rows }))
      .expect(201);
    expect(await entriesOf(api, logged.id)).toEqual([entry]);
  });

  it("is made of the speed of a curve test too, one for its readings, by the tests before it", async () => {
    const { api } = demoServer();
    const { items } = (await api.get("/api/v1/tests?kind=curve&limit=1")).body;
    const sent = { ...items[0].data, title: "new", date: "2026-03-01" };
    const { id, data } = (await api.post("/api/v1/tests").send(sent).expect(201)).body;
    const entries = await entriesOf(api, id);
    expect(entries).toHaveLength(1);
    const [{ figure, basis, row, measured, p5, p95 }] = entries;
    expect([figure, basis]).toEqual(["speed", "then"]);
    const speed = (data.rows[row].speed.value * Math.PI) / 30;
    expect(measured?.low).toBeCloseTo(speed, 6);
    expect(p5).toBeLessThan(p95 ?? 0);
  });

  it("of a row that is added: made without it, with the rows before; the others stay as they were", async () => {
    const { api } = demoServer();
    const logged = await loggedPull(api);
    const [before] = await entriesOf(api, logged.id);
    const more = { held: { value: 500, unit: "g" }, letGo: { value: 520, unit: "g" } };
    const data = { ...logged.data, rows: [...logged.data.rows, more], note: "one more" };
    await api.put(`/api/v1/tests/${logged.id}`).set("If-Match", '"1"').send(data).expect(200);
    const [first, second] = await entriesOf(api, logged.id);
    expect({ ...first, at: "" }).toEqual({ ...before, at: "" });
    expect(second).toMatchObject({ row: 1, basis: "then" });
  });

  it("of a row that is corrected, and of a test of weeks ago: marked as made afterwards", async () => {
    const { api } = demoServer();
    const logged = await loggedPull(api);
    const rows = [{ held: { value: 820, unit: "g" }, letGo: { value: 900, unit: "g" } }];
    await api
      .put(`/api/v1/tests/${logged.id}`)
      .set("If-Match", '"1"')
      .send({ ...logged.data, rows })
      .expect(200);
    expect((await entriesOf(api, logged.id))[0].basis).toBe("afterwards");
    const old = await pullOfDemo(api, { date: "2026-01-01" });
    const { id } = (await api.post("/api/v1/tests").send(old).expect(201)).body;
    expect((await entriesOf(api, id))[0].basis).toBe("afterwards");
  });

  it("a row set aside leaves the record and comes back with the prediction that it had", async () => {
    const { api } = demoServer();
    const logged = await loggedPull(api);
    const [before] = await entriesOf(api, logged.id);
    const aside = logged.data.rows.map((row: object) => ({ ...row, setAside: "the scale slipped" }));
    const put = (rows: object[], revision: number) =>
      api
        .put(`/api/v1/tests/${logged.id}`)
        .set("If-Match", `"${revision}"`)
        .send({ ...logged.data, rows })
        .expect(200);
    await put(aside, 1);
    expect(await entriesOf(api, logged.id)).toEqual([]);
    await put(logged.data.rows, 2);
    expect({ ...(await entriesOf(api, logged.id))[0], at: "" }).toEqual({ ...before, at: "" });
  });

  it("of parts that say too little: none, and the test is stored all the same", async () => {
    const book = freshBook();
    const parts = await addParts(book);
    const { id } = (await book.api.post("/api/v1/tests").send(samplePull(parts)).expect(201)).body;
    const { entries, missing, summary } = await recordOf(book.api);
    expect(entries.filter(({ test }) => test === id)).toEqual([]);
    expect(summary).toEqual([]);
    expect(missing).toBe(0);
  });

  it("travels in the archive, and a refused write leaves none behind", async () => {
    const { api } = demoServer();
    const logged = await loggedPull(api);
    const refused = await pullOfDemo(api, { rotor: "no-such-rotor" });
    await api.post("/api/v1/tests").send(refused).expect(422);
    const archive = (await api.get("/api/v1/archive")).body;
    expect(archive.predictions.map(({ test }: { test: string }) => test)).toEqual([logged.id]);
    const other = freshBook();
    await other.api.post("/api/v1/archive").send(archive).expect(201);
    expect(await entriesOf(other.api, logged.id)).toEqual(await entriesOf(api, logged.id));
    const { predictions: _without, ...earlier } = archive;
    await other.api
      .post("/api/v1/archive?replace=true")
      .send({ ...earlier, version: 3 })
      .expect(201);
    expect((await recordOf(other.api)).entries).toEqual([]);
  });
});

/** Threads that never come to predict what is logged. */
const neverForetelling = (): Threads => {
  const own = ownThread();
  const run: Threads["run"] = (name, ...asked) =>
    name === "foretell" ? new Promise(() => {}) : own.run(name, ...asked);
  return { ...own, run };
};

const bandOf = ({ p5, p50, p95, basis }: RecordEntry) => ({ p5, p50, p95, basis });

describe("a prediction that was owed when the server was killed", () => {
  it("is made at the next start, as it would have been at that moment, whatever was written since", async () => {
    const reference = demoServer();
    const there = await loggedPull(reference.api);
    const [expected] = await entriesOf(reference.api, there.id);

    const file = join(freshFolder(), "book.db");
    const store = openStore(file, new Date(NOW));
    loadDemo(store, new Date(NOW));
    const clock = () => new Date(NOW);
    const api = supertest(createApp({ store, clock, threads: neverForetelling() }));
    const logged = await loggedPull(api);
    await changedBook(api);
    expect((await api.get("/api/v1/tests?q=new")).body.items).toHaveLength(2);
    store.close();

    const next = freshBook(undefined, file);
    const [entry] = await entriesOf(next.api, logged.id);
    expect(bandOf(entry)).toEqual(bandOf(expected));
    expect(next.store.owed.first()).toBeNull();
    const left = new SQLite(file, { readonly: true }).prepare("SELECT count(*) FROM undo").pluck();
    expect(left.get()).toBe(0);
  }, 60_000);

  it("of a correction made before its turn came: kept by row as if both had been made at once", async () => {
    const file = join(freshFolder(), "book.db");
    const store = openStore(file, new Date(NOW));
    loadDemo(store, new Date(NOW));
    const clock = () => new Date(NOW);
    const api = supertest(createApp({ store, clock, threads: neverForetelling() }));
    const logged = await loggedPull(api);
    const more = { held: { value: 500, unit: "g" }, letGo: { value: 520, unit: "g" } };
    const data = { ...logged.data, rows: [more, ...logged.data.rows] };
    await api.put(`/api/v1/tests/${logged.id}`).set("If-Match", '"1"').send(data).expect(200);
    store.close();
    const next = freshBook(undefined, file);
    const entries = await entriesOf(next.api, logged.id);
    expect(entries.map(({ row, basis }) => [row, basis])).toEqual([
      [0, "afterwards"],
      [1, "then"],
    ]);
  });

  it("goes with a book that is emptied", async () => {
    const book = demoServer();
    await loggedPull(book.api);
    await book.api.post("/api/v1/bench/empty").expect(200);
    expect(book.store.owed.last()).toBeNull();
    expect((await recordOf(book.api)).entries).toEqual([]);
  });
});

/** Other pulls, another rotor size, another note of the same pull's skirt, a friction test taken out. */
async function changedBook(api: Api) {
  const rows = Array.from({ length: 10 }, () => ({
    held: { value: 300, unit: "g" },
    letGo: { value: 310, unit: "g" },
  }));
  await api
    .post("/api/v1/tests")
    .send(await pullOfDemo(api, { rows }))
    .expect(201);
  for (const [kind, drop] of [
    ["leak", true],
    ["motor", false],
  ] as const) {
    const [{ id, revision, data }] = (await api.get(`/api/v1/tests?kind=${kind}&limit=1`)).body.items;
    const change = api[drop ? "delete" : "put"](`/api/v1/tests/${id}`).set("If-Match", `"${revision}"`);
    await (drop ? change.expect(204) : change.send({ ...data, struckOut: "read off wrongly" }).expect(200));
  }
}

describe("tests of before anything was kept", () => {
  it("are predicted afterwards, some at a time, each as if it weren't there, until none is left", async () => {
    const { api } = demoServer();
    const { missing, entries } = await recordOf(api);
    expect(entries).toEqual([]);
    expect(missing).toBeGreaterThan(4);
    const { body } = await api.post("/api/v1/record/predictions").expect(200);
    const first = foretoldAfterwards.parse(body);
    expect(first.kept + first.missing).toBe(missing);
    const then = await recordOf(api);
    expect(then.missing).toBe(first.missing);
    expect(then.entries.length).toBeGreaterThan(0);
    expect(new Set(then.entries.map(({ basis }) => basis))).toEqual(new Set(["afterwards"]));
    for (const { inTime, count } of then.summary) expect([inTime, count > 0]).toEqual([0, true]);
  });
});
