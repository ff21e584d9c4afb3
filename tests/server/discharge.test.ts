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

describe("a cell whose resistance goes with its charge, given inline", () => {
  const body = (resistanceCurve: unknown) => ({
    rotor: { kind: "ducted", diameter: 0.044, psi: [1.05, -1.5, -32], lambda: [0.022, 1.1], phiMax: 0.16 },
    motor: { kv: 4900, resistance: 0.19, frictionTorque: 6e-4 },
    skirt: { perimeter: 0.36, area: 0.008, gap: 0.0006, land: 0.003 },
    vehicle: { mass: 0.75 },
    pack: {
      series: 2,
      cell: {
        capacity: 1000,
        minimumVoltage: 3,
        resistance: 0.03,
        curve: [
          [0, 3],
          [1, 4.2],
        ],
        resistanceCurve,
      },
    },
  });
  const run = (curve: unknown) => freshBook().api.post("/api/v1/rundown").send(body(curve));

  it("runs down by it; null is one resistance for all charges", async () => {
    const rising = await run([
      [0.1, 0.08],
      [0.9, 0.03],
    ]).expect(200);
    const one = await run(null).expect(200);
    const level = await run([[0.5, 0.03]]).expect(200);
    expect(level.body).toEqual(one.body);
    expect(rising.body.end.time).not.toBe(one.body.end.time);
  });

  it.each([
    ["pack.cell.resistanceCurve", []],
    [
      "pack.cell.resistanceCurve",
      [
        [0.5, 0.03],
        [0.4, 0.03],
      ],
    ],
    ["pack.cell.resistanceCurve.0.0", [[1.5, 0.03]]],
    ["pack.cell.resistanceCurve.0.1", [[0.5, -0.03]]],
  ])("refuses %s of %j by its path", async (path, curve) => {
    const { body: answer } = await run(curve).expect(400);
    expect(answer.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });

  it("is no field of a stored pack: its tests tell it", async () => {
    const { cell } = body([[0.5, 0.03]]).pack;
    const refused = await freshBook()
      .api.post("/api/v1/packs")
      .send({ name: "Bare", series: 2, cell })
      .expect(400);
    expect(refused.body.error.fields[0].path).toBe("cell.resistanceCurve");
  });
});
