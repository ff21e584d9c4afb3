import { describe, expect, it } from "vitest";
import { loadDemo } from "#server/demo.ts";
import { bookIn } from "#server/threads/bookIn.ts";
import { bookOfBuild } from "#shared/book/bookOfBuild.ts";
import { fingerprint } from "#shared/book/fingerprint.ts";
import { newestFirst } from "#shared/book/newestFirst.ts";
import { nextTests } from "#shared/book/nextTest/nextTests.ts";
import { nextTestsResponse } from "#shared/model/api/nextTests.ts";
import { freshBook } from "./support/api.ts";

function demoServer() {
  const book = freshBook();
  loadDemo(book.store, new Date("2026-03-01T08:00:00Z"));
  return book;
}

const at = (id: string, query = "") => `/api/v1/builds/${id}/next-tests${query}`;

describe("GET /builds/{id}/next-tests", () => {
  it("of a build of the demo: answers in the documented shape what the book's own function says", async () => {
    const { api, store } = demoServer();
    const { body } = await api.get(at("roof-crawler", "?angle=153&mode=driving")).expect(200);
    expect(nextTestsResponse.parse(body)).toEqual(body);
    const demo = bookIn(store.file);
    const build = demo.builds.find(({ id }) => id === "roof-crawler");
    if (!build) throw new Error("the demo has no roof-crawler");
    const verdict = { angle: 153, mode: "driving" } as const;
    const listed = { ...demo, tests: newestFirst(demo.tests) };
    const from = fingerprint(bookOfBuild(demo, build.data), [build]);
    expect(body).toEqual({ ...verdict, from, ...nextTests(listed, build.data, verdict) });
    expect(body.tests.length).toBeGreaterThan(0);
  });

  it("without an attitude: speaks of the worst, parked", async () => {
    const { body } = await demoServer().api.get(at("pane-crawler")).expect(200);
    expect(body.mode).toBe("parked");
    expect(body.angle).toBeGreaterThan(90);
    expect(body.angle).toBeLessThan(180);
  });

  it("after a write to the book: reads the book as it is then", async () => {
    const { api } = demoServer();
    const path = "/api/v1/builds/pane-crawler";
    const stored = (await api.get(path)).body;
    const before = (await api.get(at("pane-crawler", "?angle=90"))).body.before;
    const heavier = {
      ...stored.data,
      vehicle: { ...stored.data.vehicle, mass: 2 * stored.data.vehicle.mass },
    };
    await api.put(path).set("If-Match", '"1"').send(heavier).expect(200);
    const after = (await api.get(at("pane-crawler", "?angle=90"))).body.before;
    expect(after.p50 / before.p50).toBeCloseToRelative(0.5, 0.01);
  });

  it("of an unknown build: 404", async () => {
    const { body } = await demoServer().api.get(at("no-such-build")).expect(404);
    expect(body.error.message).toContain("no-such-build");
  });

  it.each([
    ["?angle=200", "angle"],
    ["?angle=up", "angle"],
    ["?mode=flying", "mode"],
    ["?attitude=90", ""],
  ])("of the query %s: 400 that names the field", async (query, path) => {
    const { body } = await demoServer().api.get(at("pane-crawler", query)).expect(400);
    expect(body.error.fields[0].path).toContain(path);
  });

  it("of a build whose surface's friction nobody knows: 422 that names what is missing", async () => {
    const { api } = demoServer();
    const { items } = (await api.get("/api/v1/tests?kind=friction")).body;
    for (const { id, revision } of items)
      await api.delete(`/api/v1/tests/${id}`).set("If-Match", `"${revision}"`).expect(204);
    const surface = (await api.get("/api/v1/surfaces/ridge-board")).body;
    const { data } = surface ?? {};
    expect(data, "the demo has a ridge board").toBeDefined();
    const { wheelFriction: _unknown, ...rest } = data;
    await api.put("/api/v1/surfaces/ridge-board").set("If-Match", '"1"').send(rest).expect(200);
    const pulls = (await api.get("/api/v1/tests?kind=pull")).body.items;
    for (const { id, revision } of pulls)
      await api.delete(`/api/v1/tests/${id}`).set("If-Match", `"${revision}"`).expect(204);
    const { body } = await api.get(at("ridge-runner")).expect(422);
    expect(body.error.code).toBe("not-enough-data");
    expect(body.error.fields[0]).toMatchObject({ path: "friction", message: expect.stringMatching(/tilt/) });
  });
});
