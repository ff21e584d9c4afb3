import { describe, expect, it } from "vitest";
import { loadDemo } from "#server/demo.ts";
import { verdictResponse } from "#shared/model/api/verdict.ts";
import type { Build } from "#shared/model/build.ts";
import { freshBook } from "./support/api.ts";

function demoServer() {
  const book = freshBook();
  loadDemo(book.store, new Date("2026-03-01T08:00:00Z"));
  return book;
}

const at = (id: string, query = "?samples=128") => `/api/v1/builds/${id}/verdict${query}`;

/** The demo's build, changed; its verdict. */
async function judged(id: string, change: (build: Build) => object) {
  const { api } = demoServer();
  const { data } = (await api.get(`/api/v1/builds/${id}`)).body;
  await api
    .put(`/api/v1/builds/${id}`)
    .set("If-Match", '"1"')
    .send({ ...data, ...change(data) })
    .expect(200);
  const { body } = await api.get(at(id)).expect(200);
  return verdictResponse.parse(body);
}

describe("GET /builds/{id}/verdict", () => {
  it("of each build of the demo: answers in the documented shape, its margin the least of its own prediction", async () => {
    const { api } = demoServer();
    const { items } = (await api.get("/api/v1/builds")).body;
    expect(items.length).toBeGreaterThan(2);
    for (const { id } of items) {
      const { body } = await api.get(at(id)).expect(200);
      const { verdict, prediction, crossings, restsOn } = verdictResponse.parse(body);
      expect(body).toEqual(verdictResponse.parse(body));
      const worst = [prediction, ...crossings].flatMap((each) => [each.worst.parked, each.worst.driving]);
      const least = Math.min(...worst.map(({ margin }) => margin ?? Infinity));
      if (verdict.margin !== undefined) expect(verdict.margin).toBe(least);
      expect(new Set(restsOn.map((test) => test.id)).size).toBe(restsOn.length);
    }
  });

  it("with as many samples as asked: their least chance decides what is unsure", async () => {
    const { doubt, verdict } = await judged("pane-crawler", ({ vehicle }) => ({
      vehicle: { ...vehicle, mass: 1.58 * (vehicle.mass ?? 0) },
      targetMargin: 1,
    }));
    const chances = doubt?.attitudes.flatMap(({ parked, driving }) => [parked.holds, driving.holds]) ?? [];
    expect(Math.min(...chances)).toBeLessThan(0.95);
    expect(chances.every((chance) => Number.isInteger(chance * 128))).toBe(true);
    expect(verdict.state).toBe("unsure");
    expect(verdict.reason).toMatch(/^Not sure: .* is sure\. Sure from \d+\sg down\.$/);
  });

  it.each([
    [3, "burns"],
    [6, "bursts"],
  ])(
    "with %i cells in series, at twice the pull it needs or more: %s, names the way out and keeps the margin back",
    async (series, state) => {
      const { verdict, prediction } = await judged("pane-crawler", ({ overrides }) => ({
        overrides: { ...overrides, series },
      }));
      expect(prediction.worst.parked.margin).toBeGreaterThan(2);
      expect(verdict.state).toBe(state);
      expect(verdict.reason).toMatch(/Holds again from \d{2}\s\d{3}\srpm down: throttle \d+\s%/);
      expect(Object.keys(verdict)).toEqual(["state", "reason"]);
    },
  );

  it("without a number of samples: takes 2048", async () => {
    const { body } = await demoServer().api.get(at("pane-crawler", "")).expect(200);
    const { doubt } = verdictResponse.parse(body);
    expect(doubt?.attitudes.every(({ parked }) => Number.isInteger(parked.holds * 2048))).toBe(true);
  });

  it.each([["?samples=1"], ["?samples=1e9"], ["?samples=200.5"], ["?samples=many"], ["?seed=1"]])(
    "of the query %s: 400",
    async (query) => {
      await demoServer().api.get(at("pane-crawler", query)).expect(400);
    },
  );

  it("of an unknown build: 404", async () => {
    const { body } = await demoServer().api.get(at("no-such-build")).expect(404);
    expect(body.error.message).toContain("no-such-build");
  });

  it("of a build whose motor nobody knows: 422 that names what is missing", async () => {
    const { api } = demoServer();
    const motor = (await api.get("/api/v1/builds/pane-crawler")).body.data.motor;
    const tests = (await api.get(`/api/v1/tests?kind=motor&motor=${motor}`)).body.items;
    for (const { id, revision } of tests)
      await api.delete(`/api/v1/tests/${id}`).set("If-Match", `"${revision}"`).expect(204);
    const { body: stored } = await api.get(`/api/v1/motors/${motor}`);
    const { kv: _kv, resistance: _resistance, ...rest } = stored.data;
    await api
      .put(`/api/v1/motors/${motor}`)
      .set("If-Match", `"${stored.revision}"`)
      .send({ ...rest, estimated: [] })
      .expect(200);
    const { body } = await api.get(at("pane-crawler")).expect(422);
    expect(body.error.code).toBe("not-enough-data");
    expect(body.error.message).toContain("so there is no verdict");
    expect(body.error.fields[0].path).toContain("motor");
  });
});
