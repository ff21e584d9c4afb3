import { describe, expect, it } from "vitest";
import { dischargeFitResponse } from "#shared/model/api/dischargeFit.ts";
import { freshBook } from "./support/api.ts";

const post = (body: object) => freshBook().api.post("/api/v1/fit/discharge").send(body);

/** V_oc = 3.2 + z, 20 mΩ, 2000 C; a rest after every reading under 2 A. */
const readings = Array.from({ length: 21 }, (_, i) => i / 20).flatMap((used) =>
  [0, 2].map((current) => ({ drawn: 2000 * used, voltage: 4.2 - used - 0.02 * current, current })),
);

describe("POST /fit/discharge", () => {
  it("of readings with rests: finds the truth behind them, in the documented shape", async () => {
    const { body } = await post({ runs: [{ readings }] }).expect(200);
    expect(dischargeFitResponse.parse(body)).toEqual(body);
    expect(body.resistance).toBeCloseToRelative(0.02, 1e-9);
    expect(body).toMatchObject({ resistanceFrom: "rests", capacity: 2000, capacityFrom: "emptied" });
    for (const [charge, voltage] of body.curve) expect(Math.abs(voltage - 3.2 - charge)).toBeLessThan(2e-6);
    expect(body.warnings).toEqual([]);
  });

  it("of one current, no resistance known: 422 that says what to measure next", async () => {
    const loaded = readings.filter(({ current }) => current > 0);
    const { body } = await post({ runs: [{ readings: loaded }] }).expect(422);
    expect(body.error.message).toMatch(/Rest for a minute/);
    expect(body.error.fields[0].path).toBe("runs");
    const known = await post({ runs: [{ readings: loaded }], knownResistance: 0.02 }).expect(200);
    expect(known.body.warnings.map(({ code }: { code: string }) => code)).toEqual(["resistance-not-told"]);
  });

  it("of repeated rows, or all at one charge: an answer or a 422, never a number that isn't one", async () => {
    const twice = await post({ runs: [{ readings: [...readings, ...readings] }] }).expect(200);
    expect(twice.body.resistance).toBeCloseToRelative(0.02, 1e-6);
    const one = readings.map((reading) => ({ ...reading, drawn: 0 }));
    await post({ runs: [{ readings: one }] }).expect(422);
    const same = readings.map((reading) => ({ ...reading, drawn: 500 }));
    const answer = await post({ runs: [{ readings: same }] }).expect(422);
    expect(answer.body.error.fields[0].path).toBe("runs");
  });

  it.each([
    ["runs", { runs: [] }],
    ["runs.0.readings", { runs: [{ readings: [] }] }],
    ["runs.0.readings.0.voltage", { runs: [{ readings: [{ drawn: 0, voltage: -1, current: 0 }] }] }],
    ["knownCapacity", { runs: [{ readings }], knownCapacity: 0 }],
  ])("with a wrong %s: 400 that names it", async (path, body) => {
    const answer = await post(body).expect(400);
    expect(answer.body.error.fields[0].path).toBe(path);
  });
});

describe("a stored pack without a curve", () => {
  const pack = {
    name: "Bare pack",
    series: 2,
    cell: { capacity: 1620, minimumVoltage: 3.2, resistance: 0.03 },
  };

  it("is kept with its chemistry, or with neither; an unknown chemistry is refused by name", async () => {
    const { api } = freshBook();
    const stored = await api
      .post("/api/v1/packs")
      .send({ ...pack, cell: { ...pack.cell, chemistry: "lithium-ion" } })
      .expect(201);
    expect(stored.body.data.cell.curve).toBeUndefined();
    await api.post("/api/v1/packs").send(pack).expect(201);
    const refused = await api
      .post("/api/v1/packs")
      .send({ ...pack, cell: { ...pack.cell, chemistry: "coal" } })
      .expect(400);
    expect(refused.body.error.fields[0].path).toBe("cell.chemistry");
  });

  it("takes a discharge test", async () => {
    const { api } = freshBook();
    const { body } = await api.post("/api/v1/packs").send(pack).expect(201);
    const rows = readings.map(({ drawn, voltage, current }) => ({
      charge: { value: drawn, unit: "C" },
      voltage: { value: 2 * voltage, unit: "V" },
      current: { value: current, unit: "A" },
    }));
    const test = { kind: "discharge", date: "2026-05-06", pack: body.id, rows };
    await api.post("/api/v1/tests").send(test).expect(201);
    const listed = await api.get(`/api/v1/tests?kind=discharge&pack=${body.id}`).expect(200);
    expect(listed.body.items).toHaveLength(1);
  });
});
