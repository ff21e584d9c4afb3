import { describe, expect, it } from "vitest";
import { rundownResponse } from "#shared/model/api/rundown.ts";
import { expectPrinted, workedExample } from "#tests/support/workedExample.ts";
import { freshBook } from "./support/api.ts";

const cell = {
  capacity: 700,
  minimumVoltage: 3,
  resistance: 0.026,
  curve: [
    [0, 3],
    [0.3, 3.65],
    [1, 4.18],
  ],
};
const crawler = {
  rotor: { diameter: 0.044, psi: [1.05, -1.5, -32], lambda: [0.022, 1.1], phiMax: 0.16 },
  motor: { kv: 4900, resistance: 0.19, frictionTorque: 6e-4 },
  pack: { series: 2, wireResistance: 0.014, cell },
  skirt: { perimeter: 0.36, area: 0.008, gap: 0.0006, land: 0.003, edge: "square" },
  vehicle: { mass: 0.9 },
};

const post = (body: object) => freshBook().api.post("/api/v1/rundown").send(body);

describe("POST /rundown", () => {
  it("of a build given inline: answers in the documented shape, nothing more", async () => {
    const { body } = await post(crawler).expect(200);
    expect(rundownResponse.parse(body)).toEqual(body);
    expect(body.attitudes.map(({ angle }: { angle: number }) => angle).slice(0, 2)).toEqual([90, 180]);
    expect(body.attitudes[0].holds.state).toBe("falls");
    expect(body.attitudes[0].holds.time).toBeLessThan(body.end.time);
    expect(body.samples[0]).toMatchObject({ time: 0, charge: 1 });
    expect(body.samples.at(-1).time).toBe(body.end.time);
  });

  it("with optional parts left out or given as their defaults: the same", async () => {
    const plain = await post(crawler);
    const motor = { ...crawler.motor, thermalResistance: null, thermalTimeConstant: null };
    const spelled = await post({ ...crawler, motor, startCharge: 1, targetMargin: 1.5, step: 1 });
    expect(spelled.body).toEqual(plain.body);
  });

  it("starts at the point that /predict finds at the cell's voltage", async () => {
    const { body } = await post(crawler);
    const { cell: _cell, ...rest } = crawler.pack;
    const pack = { ...rest, openCircuitVoltage: 4.18, cellResistance: 0.026 };
    const predicted = await freshBook()
      .api.post("/api/v1/predict")
      .send({ ...crawler, pack });
    const { rpm, pressure, packVoltage, packCurrent } = predicted.body.point;
    for (const [key, value] of Object.entries({ rpm, pressure, packVoltage, packCurrent }))
      expect(body.samples[0][key]).toBeCloseToRelative(value, 1e-10);
  });

  it("for attitudes of one's own: answers for those alone", async () => {
    const { body } = await post({ ...crawler, angles: [153, 0] }).expect(200);
    expect(body.attitudes.map(({ angle }: { angle: number }) => angle)).toEqual([153, 0]);
  });

  it("of a motor that cannot turn: an answer with a warning, not an error", async () => {
    const motor = { ...crawler.motor, frictionTorque: 1 };
    const { body } = await post({ ...crawler, motor }).expect(200);
    expect(body.warnings.map(({ code }: { code: string }) => code)).toContain("motor-stalled");
    expect(body.attitudes[0].holds).toEqual({ time: null, packVoltage: null, state: "never-held" });
  });

  it("of a propeller without a skirt: pressure is null, thrust pulls", async () => {
    const { skirt: _skirt, ...rest } = crawler;
    const rotor = {
      kind: "propeller",
      diameter: 0.09,
      thrust: [0.12, 0.004],
      power: [0.06, -0.002],
      referenceReynolds: 20_000,
      chord: 0.012,
    };
    const { body } = await post({ ...rest, rotor }).expect(200);
    expect(rundownResponse.parse(body)).toEqual(body);
    expect(body.samples[0].pressure).toBeNull();
    expect(body.samples[0].suction).toBeGreaterThan(0);
  });

  it("through a drive cycle: answers in the documented shape, each load beside the mean", async () => {
    const cycle = [
      { angle: 90, share: 0.6, driveCurrent: 1.2 },
      { angle: 0, share: 0.4, moving: false },
    ];
    const { body } = await post({ ...crawler, cycle }).expect(200);
    expect(rundownResponse.parse(body)).toEqual(body);
    expect(body.attitudes[0].judged).toEqual({ driveCurrent: 1.2, parked: false });
    expect(body.samples[0].loads.map(({ driveCurrent }: { driveCurrent: number }) => driveCurrent)).toEqual([
      0, 1.2,
    ]);
    const plain = await post(crawler);
    expect(body.end.time).toBeLessThan(plain.body.end.time);
    expect(plain.body.samples[0].loads).toBeUndefined();
  });

  it("of shares that are not the whole: 400 that says their sum", async () => {
    const cycle = [{ angle: 90, share: 0.6, driveCurrent: 1.2 }];
    const { body } = await post({ ...crawler, cycle }).expect(400);
    expect(body.error.fields).toEqual([
      { path: "cycle", message: "The shares add up to 0.6; they must add up to 1, for example 0.6 and 0.4." },
    ]);
  });

  it("of a run without an end in sight: 422 that says how long a run may be", async () => {
    const motor = { ...crawler.motor, frictionTorque: 1 };
    const pack = { ...crawler.pack, cell: { ...cell, capacity: 1e7, minimumVoltage: 0.1 } };
    const { body } = await post({ ...crawler, motor, pack }).expect(422);
    expect(body.error.fields[0].path).toBe("pack.cell.capacity");
    expect(body.error.message).toMatch(/12.0 h/);
  });

  it("of a kept suction: the throttle beside every sample, and when full throttle is too little", async () => {
    const { body } = await post({ ...crawler, keep: { pressure: 1600 } }).expect(200);
    expect(rundownResponse.parse(body)).toEqual(body);
    expect(body.samples[0].pressure).toBeCloseToRelative(1600, 1e-12);
    expect(body.keep.dutyAtStart).toBe(body.samples[0].duty);
    expect(body.keep.fullThrottleFrom).toBeGreaterThan(0);
    const plain = await post({ ...crawler, keep: null });
    expect(plain.body).toEqual((await post(crawler)).body);
    expect([plain.body.keep, plain.body.samples[0].duty]).toEqual([undefined, undefined]);
  });

  const withCell = (change: object) => ({ pack: { ...crawler.pack, cell: { ...cell, ...change } } });
  const curve = (...points: number[][]) => withCell({ curve: points });
  it("of the worked example in docs/method/run-down.md: gives what is printed there", async () => {
    const { request, answer } = workedExample("run-down");
    const { body } = await post(request).expect(200);
    expectPrinted(body, answer);
  });

  it("of its second example, through a drive cycle: gives what is printed there", async () => {
    const { request } = workedExample("run-down");
    const cycled = workedExample("run-down", 1);
    const { body } = await post({ ...request, ...cycled.request }).expect(200);
    expectPrinted(body, cycled.answer);
  });

  it.each([
    ["pack.cell.curve", withCell({ curve: undefined })],
    ["pack.cell.curve", curve([0, 3.2], [0.5, 3.7], [0.4, 3.8], [1, 4.2])],
    ["pack.cell.curve", curve([0, 3.9], [1, 3.7])],
    ["pack.cell.curve", curve([0.2, 3.4], [1, 4.2])],
    ["pack.cell.curve", curve()],
    ["pack.cell.capacity", withCell({ capacity: 0 })],
    ["pack.cell", { pack: { series: 2 } }],
    ["pack.openCircuitVoltage", { pack: { ...crawler.pack, openCircuitVoltage: 3.9 } }],
    ["cycle", { cycle: [] }],
    ["cycle.0.driveCurrent", { cycle: [{ angle: 90, share: 1, driveCurrent: 1, moving: false }] }],
    ["cycle.0.angle", { cycle: [{ angle: 190, share: 1 }] }],
    ["keep.pressure", { keep: { pressure: 0 } }],
    ["startCharge", { startCharge: 0 }],
    ["startCharge", { startCharge: 80 }],
    ["step", { step: 5 }],
    ["step", { step: 0 }],
    ["targetMargin", { targetMargin: -1 }],
    ["angles.1", { angles: [90, 200] }],
    ["angles", { angles: [] }],
    ["motor.thermalResistance", { motor: { ...crawler.motor, thermalTimeConstant: 30 } }],
    ["skirt", { skirt: null }],
    ["uncertainty", { uncertainty: {} }],
  ])("with a wrong %s: 400 that names it", async (path, change) => {
    const { body } = await post({ ...crawler, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });
});
