import { describe, expect, it } from "vitest";
import { sizeResponse } from "#shared/model/api/size.ts";
import { expectPrinted, workedExample } from "#tests/support/workedExample.ts";
import { freshBook } from "./support/api.ts";

const crawler = {
  rotor: { diameter: 0.044, psi: [1.05, -1.5, -32], lambda: [0.022, 1.1], phiMax: 0.16 },
  motor: { motorConstant: 0.0045, frictionTorque: 6e-4 },
  pack: { series: 2, openCircuitVoltage: 3.75, cellResistance: 0.026, wireResistance: 0.014 },
  skirt: { perimeter: 0.36, area: 0.008, gap: 0.0006, land: 0.003, edge: "square" },
  vehicle: { mass: 0.4 },
  pull: 6,
  diameters: [0.036, 0.044, 0.052],
};

const post = (path: string, body: object) => freshBook().api.post(`/api/v1/${path}`).send(body);

describe("POST /size", () => {
  it("of a pull: answers in the documented shape, nothing more; the least watts are named", async () => {
    const { body } = await post("size", crawler).expect(200);
    expect(sizeResponse.parse(body)).toEqual(body);
    const power = body.rows.map(({ packPower }: { packPower: number }) => packPower);
    expect(body.least).toBe(power.indexOf(Math.min(...power)));
  });

  it("put back into /predict: the same point, the same watts", async () => {
    const { body } = await post("size", crawler);
    const { diameters: _list, pull: _need, ...rest } = crawler;
    for (const { diameter, kv, resistance, ...row } of body.rows) {
      const rotor = { ...crawler.rotor, diameter };
      const motor = { kv, resistance, frictionTorque: 6e-4 };
      const { body: back } = await post("predict", { ...rest, rotor, motor });
      expect(back.suction).toBeCloseToRelative(6, 1e-9);
      const { packVoltage, packCurrent } = back.point;
      expect(row.packPower).toBeCloseToRelative(packVoltage * packCurrent, 1e-9);
      for (const key of ["pressure", "flow", "phi", "speed", "shaftPower", "motorCurrent"])
        expect(row[key]).toBeCloseToRelative(back.point[key], 1e-9);
    }
  });

  it.each([
    ["on an angle", { angle: 153, margin: 1.5 }],
    ["on the worst attitude, as a word", { angle: "worst", margin: 1.5 }],
    ["on the worst attitude, as a key", { worst: true, margin: 1.5 }],
  ])("of a margin %s: the driving margin of /predict there", async (_where, hold) => {
    const { pull: _none, ...rest } = crawler;
    const { body } = await post("size", { ...rest, hold }).expect(200);
    const { diameters: _list, ...build } = rest;
    const [{ diameter, kv, resistance }] = body.rows;
    const motor = { kv, resistance, frictionTorque: 6e-4 };
    const asked = { ...build, rotor: { ...crawler.rotor, diameter }, motor };
    const attitude = "angle" in hold ? hold.angle : "worst";
    const { body: back } = await post("ways", { ...asked, attitude, mode: "driving" });
    expect(back.margin).toBeCloseToRelative(1.5, 1e-9);
  });

  it("with a cell: how long it does so, and limits at a full charge", async () => {
    const cell = {
      capacity: 1620,
      minimumVoltage: 3.2,
      resistance: 0.026,
      maxCurrent: 9,
      curve: [
        [0, 3.3],
        [0.3, 3.74],
        [1, 4.19],
      ],
    };
    const { body } = await post("size", { ...crawler, cell, motorLimits: { ratedVoltage: 7.4 } }).expect(200);
    const [row] = body.rows;
    expect(row.exceeds).toEqual(["motor-voltage"]);
    expect(row.notes[0].message).toMatch(/^The motor gets .* at full charge, its maker rates it at 7.40/);
    const { diameters: _list, pull: _need, pack: _steady, ...build } = crawler;
    const { body: run } = await post("rundown", {
      ...build,
      rotor: { ...crawler.rotor, diameter: row.diameter },
      motor: { kv: row.kv, resistance: row.resistance, frictionTorque: 6e-4 },
      pack: { series: 2, wireResistance: 0.014, cell },
    });
    // The moment at which the run's pull passes that of the size, straight between two samples.
    const { samples } = run as { samples: { time: number; suction: number }[] };
    const after = samples.findIndex(({ suction }) => suction < 6);
    const [a, b] = [samples[after - 1], samples[after]];
    const time = a.time + ((a.suction - 6) / (a.suction - b.suction)) * (b.time - a.time);
    expect(row.holdTime).toBeCloseToRelative(time, 3e-3);
  });

  it("of the worked example in docs/method/size.md: gives what is printed there", async () => {
    const { request, answer } = workedExample("size");
    const { body } = await post("size", request).expect(200);
    expectPrinted(body, answer);
  });

  const { pull: _pull, ...needless } = crawler;
  it.each([
    ["pull", needless],
    ["pull", { ...crawler, hold: { angle: 90, margin: 1.5 } }],
    ["pull", { ...crawler, pull: 0 }],
    ["hold.angle", { ...needless, hold: { margin: 1.5 } }],
    ["hold.angle", { ...needless, hold: { angle: 190, margin: 1.5 } }],
    ["hold.margin", { ...needless, hold: { angle: 90, margin: 0 } }],
    ["diameters", { ...crawler, diameters: [] }],
    ["diameters.1", { ...crawler, diameters: [0.04, -0.04] }],
    ["motor.motorConstant", { ...crawler, motor: { motorConstant: 0 } }],
    ["skirt", { ...crawler, skirt: null }],
  ])("with a wrong %s: 400 that names it", async (path, body) => {
    const { body: refused } = await post("size", body).expect(400);
    expect(refused.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });

  it("of an attitude that needs no pull: 422 that says what to ask for", async () => {
    const { body } = await post("size", { ...needless, hold: { angle: 0, margin: 1.5 } }).expect(422);
    expect(body.error.fields[0].path).toBe("hold.angle");
    expect(body.error.message).toMatch(/steeper/);
  });

  it("of a need that no size keeps its limits with: no least, and the nearest pull that can be had", async () => {
    const rotorBody = { density: 1240, poisson: 0.36, strength: 4e5, boreDiameter: 0.0015 };
    const { body } = await post("size", { ...crawler, rotorBody }).expect(200);
    expect(body.least).toBeNull();
    const { pull } = body.nearest;
    const again = await post("size", { ...crawler, rotorBody, pull: 0.999 * pull });
    expect(again.body.least).not.toBeNull();
  });
});
