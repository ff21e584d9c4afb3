import { describe, expect, it } from "vitest";
import { rideHeightFitResponse } from "#shared/model/api/rideHeightFit.ts";
import { freshBook } from "./support/api.ts";

type Api = ReturnType<typeof freshBook>["api"];

const reading = (load: number, height: number) => ({
  load: { value: load, unit: "g" },
  height: { value: height, unit: "mm" },
});
const test = (gear: string, rows: object[]) => ({ kind: "ride-height", date: "2026-05-20", gear, rows });

async function gearIn(api: Api): Promise<string> {
  const { body } = await api.post("/api/v1/gears").send({ name: "Foam tyres" }).expect(201);
  return body.id;
}

describe("ride-height tests, over the API", () => {
  it("are stored for a running gear, which is then guarded against deletion", async () => {
    const { api } = freshBook();
    const gear = await gearIn(api);
    const { body } = await api
      .post("/api/v1/tests")
      .send(test(gear, [reading(0, 0.8), reading(300, 0.5)]))
      .expect(201);
    expect(body.data).toMatchObject({ kind: "ride-height", gear, instruments: {} });
    await api.delete(`/api/v1/gears/${gear}`).set("If-Match", '"1"').expect(409);
    const { body: list } = await api.get(`/api/v1/tests?gear=${gear}`).expect(200);
    expect(list.items).toHaveLength(1);
  });

  it.each([
    ["rows", "at one load", [reading(300, 0.8), reading(300, 0.5)]],
    ["rows", "one reading alone", [reading(0, 0.8)]],
    ["rows.0.height.value", "a height below 0", [reading(0, -0.1), reading(300, 0.5)]],
  ])("names %s of readings %s; nothing is stored", async (path, _what, rows) => {
    const { api } = freshBook();
    const gear = await gearIn(api);
    const { body } = await api.post("/api/v1/tests").send(test(gear, rows)).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
    expect(body.error.fields[0].message).toMatch(/allowed: /);
    const { body: list } = await api.get("/api/v1/tests");
    expect(list.items).toEqual([]);
  });

  it.each([0, -4000])("a build's stated stiffness of %s is refused by name", async (verticalStiffness) => {
    const { api } = freshBook();
    const { body } = await api.post("/api/v1/builds").send({ vehicle: { mass: 0.2, verticalStiffness } });
    expect(body.error.fields).toContainEqual({
      path: "vehicle.verticalStiffness",
      message: expect.stringMatching(/allowed: .*0/),
    });
  });
});

describe("POST /fit/ride-height", () => {
  const points = [
    { load: 0, height: 8e-4 },
    { load: 3, height: 5e-4 },
  ];

  it("gives stiffness and height with their errors, in the documented shape", async () => {
    const { api } = freshBook();
    const { body } = await api.post("/api/v1/fit/ride-height").send({ points, heightUncertainty: 1e-5 });
    expect(rideHeightFitResponse.parse(body)).toEqual(body);
    // By hand: 3 N/0.3 mm; u(k) = k²·√2·u(h)/3 N.
    expect(body.stiffness).toBeCloseToRelative(1e4, 1e-12);
    expect(body.standardErrors.stiffness).toBeCloseToRelative((1e8 * Math.SQRT2 * 1e-5) / 3, 1e-12);
    expect(body.height).toBeCloseToRelative(8e-4, 1e-12);
  });

  it.each([
    ["one load", { points: [points[0], points[0]] }],
    ["a lip that rises", { points: [points[0], { load: 3, height: 9e-4 }] }],
  ])("of %s: 422, with what to read instead", async (_what, body) => {
    const { api } = freshBook();
    const answer = await api.post("/api/v1/fit/ride-height").send(body).expect(422);
    expect(answer.body.error.fields[0].path).toBe("points");
    expect(answer.body.error.message).toMatch(/loads/);
  });

  it.each([
    ["points.0.height", { points: [{ load: 0, height: -1 }] }],
    ["heightUncertainty", { points, heightUncertainty: 0 }],
  ])("names %s", async (path, body) => {
    const { api } = freshBook();
    const answer = await api.post("/api/v1/fit/ride-height").send(body).expect(400);
    expect(answer.body.error.fields.map((field: { path: string }) => field.path)).toContain(path);
  });
});
