import { describe, expect, it } from "vitest";
import { loadDemoOnFirstStart } from "#server/demo.ts";
import { freshBook } from "./support/api.ts";
import { freshStore } from "./support/book.ts";
import { samples } from "./support/records.ts";

const at = new Date("2026-03-01T08:00:00Z");

describe("the demo", () => {
  it("on the first start of a new file: is in the book, and the book says that it is the demo", async () => {
    const book = freshBook();
    loadDemoOnFirstStart(book.store, at);
    const { body } = await book.api.get("/api/v1/bench").expect(200);
    expect(body.demo).toBe(true);
    for (const count of Object.values(body.counts)) expect(count).toBeGreaterThan(0);
    const { items } = (await book.api.get("/api/v1/tests?limit=500")).body;
    expect(items).toHaveLength(body.counts.tests);
  });

  it("on the next start after the bench was emptied: stays away", () => {
    const store = freshStore();
    loadDemoOnFirstStart(store, at);
    store.empty(at);
    loadDemoOnFirstStart(store, at);
    expect(store.isEmpty()).toBe(true);
    expect(store.isDemo()).toBe(false);
  });

  it("on the first start of a file that already holds records: leaves them alone", () => {
    const store = freshStore();
    store.collections.surfaces.create(samples.surfaces, at.toISOString());
    loadDemoOnFirstStart(store, at);
    expect(store.counts()).toMatchObject({ surfaces: 1, builds: 0 });
  });

  it("asked for: loaded into an empty bench, refused with 409 in one that holds records", async () => {
    const book = freshBook();
    const loaded = await book.api.post("/api/v1/bench/demo").expect(201);
    expect(loaded.body.demo).toBe(true);
    const refused = await book.api.post("/api/v1/bench/demo").expect(409);
    expect(refused.body.error.code).toBe("not-empty");
    await book.api.post("/api/v1/bench/empty").expect(200);
    const again = await book.api.post("/api/v1/bench/demo").expect(201);
    expect(again.body.counts).toEqual(loaded.body.counts);
  });

  it("where every record was deleted one by one: can be loaded again, and a copy of what was is kept", async () => {
    const { api } = freshBook();
    const { body } = await api.post("/api/v1/surfaces").send(samples.surfaces);
    await api.delete(`/api/v1/surfaces/${body.id}`).expect(204);
    const loaded = await api.post("/api/v1/bench/demo").expect(201);
    expect(loaded.body.backup).toMatch(/\.bak$/);
  });
});
