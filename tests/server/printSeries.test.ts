import { describe, expect, it } from "vitest";
import { loadDemo } from "#server/demo.ts";
import { printSeriesResponse } from "#shared/model/api/printSeries.ts";
import { freshBook } from "./support/api.ts";

function demoServer() {
  const book = freshBook();
  loadDemo(book.store, new Date("2026-03-01T08:00:00Z"));
  return book;
}

const at = (id: string, query = "") => `/api/v1/builds/${id}/print-series${query}`;

describe("GET /builds/{id}/print-series", () => {
  it("of a build with a rotor in a duct: its best size, and sizes among those that were asked for", async () => {
    const { body } = await demoServer()
      .api.get(at("pane-crawler", "?margin=1.2&from=0.036&to=0.06"))
      .expect(200);
    expect(printSeriesResponse.parse(body)).toEqual(body);
    expect(body.rotor).toBe("swept-nine");
    expect(body.least.diameter).toBeGreaterThan(0.036);
    expect(body.known).toBeGreaterThan(0);
    for (const { diameter, cut } of body.prints) {
      expect(diameter).toBeGreaterThanOrEqual(0.036);
      expect(diameter).toBeLessThanOrEqual(0.06);
      expect(cut).toBeGreaterThanOrEqual(0.01);
    }
  });

  it("of a build with an open propeller: by the thrust tests that its prints would have", async () => {
    const { api } = demoServer();
    const tests = (await api.get("/api/v1/tests?limit=500")).body.items;
    const [first, ...others] = tests.filter(({ data }: { data: { kind: string } }) => data.kind === "thrust");
    for (const { id, revision } of others)
      await api.delete(`/api/v1/tests/${id}`).set("If-Match", `"${revision}"`).expect(204);
    await api
      .put(`/api/v1/tests/${first.id}`)
      .set("If-Match", `"${first.revision}"`)
      .send({ ...first.data, rows: first.data.rows.slice(0, 4) })
      .expect(200);
    const { body } = await api.get(at("prop-scout", "?angle=90&mode=parked&margin=1")).expect(200);
    expect(printSeriesResponse.parse(body)).toEqual(body);
    expect(body.prints.length).toBeGreaterThanOrEqual(3);
    const cuts = body.prints.map(({ cut }: { cut: number }) => cut);
    expect(cuts).toEqual([...cuts].sort((a: number, b: number) => b - a));
    expect(body.together).toBeGreaterThan(0);
  });

  it.each([
    ["an unknown build", "no-such-build", "", 404],
    ["an unknown rotor", "pane-crawler", "?rotor=no-such-rotor", 422],
    ["sizes whose ends are reversed", "pane-crawler", "?from=0.06&to=0.04", 422],
    ["an attitude that it keeps by its weight alone", "pane-crawler", "?angle=0", 422],
    ["a margin below 1", "pane-crawler", "?margin=0.2", 400],
    ["an open propeller in words", "pane-crawler", "?from=large", 400],
  ])("of %s: refused in words", async (_, id, query, status) => {
    const { body } = await demoServer().api.get(at(id, query)).expect(status);
    expect(body.error.message).toMatch(/ /);
    expect(body.error.message).not.toMatch(/NaN|undefined/);
  });
});
