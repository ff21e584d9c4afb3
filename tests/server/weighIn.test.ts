import { describe, expect, it } from "vitest";
import { freshBook } from "./support/api.ts";

const rows = [{ reading: { value: 31, unit: "g" } }];
const weighing = (more: object) => ({ kind: "weigh-in", date: "2026-05-20", rows, ...more });

describe("weigh-ins, over the API", () => {
  it("of a part are stored, and guard it against deletion", async () => {
    const { api } = freshBook();
    const made = await api.post("/api/v1/motors").send({ name: "Bell" });
    const { body } = await api
      .post("/api/v1/tests")
      .send(weighing({ weighed: "part", motor: made.body.id }))
      .expect(201);
    expect(body.data).toMatchObject({ weighed: "part", motor: made.body.id, build: null });
    await api.delete(`/api/v1/motors/${made.body.id}`).set("If-Match", '"1"').expect(409);
  });

  it.each([
    ["build", "a whole build that isn't named", { weighed: "build" }],
    ["rotor", "two parts as one", { weighed: "part", motor: "m", pack: "p" }],
    ["what", "parts of which none is named", { weighed: "assembly" }],
    ["weighed", "nothing known", { weighed: "house" }],
    [
      "rows.0.reading.value",
      "nothing",
      { weighed: "part", what: "x", rows: [{ reading: { value: 0, unit: "g" } }] },
    ],
  ])("names %s of %s; nothing is stored", async (path, _what, more) => {
    const { api } = freshBook();
    const { body } = await api.post("/api/v1/tests").send(weighing(more)).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toContain(path);
    expect((await api.get("/api/v1/tests")).body.items).toEqual([]);
  });
});

describe("run logs, over the API", () => {
  it("name an outcome that is none, by its place", async () => {
    const { api } = freshBook();
    const { body } = await api
      .post("/api/v1/tests")
      .send({
        kind: "run-log",
        date: "2026-05-20",
        build: "b",
        rows: [{ outcome: "flew", angle: { value: 90, unit: "°" } }],
      })
      .expect(400);
    expect(body.error.fields[0].path).toBe("rows.0.outcome");
  });
});
