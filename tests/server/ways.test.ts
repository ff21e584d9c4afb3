import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { sensitivitiesResponse } from "#shared/model/api/sensitivities.ts";
import { waysResponse } from "#shared/model/api/ways.ts";
import { expectPrinted, workedExample } from "#tests/support/workedExample.ts";
import { freshBook } from "./support/api.ts";

const cell = {
  capacity: 3600,
  minimumVoltage: 3,
  resistance: 0.026,
  curve: [
    [0, 3],
    [0.05, 3.4],
    [0.3, 3.65],
    [0.7, 3.85],
    [1, 4.18],
  ],
};
const crawler = {
  rotor: { diameter: 0.044, psi: [1.05, -1.5, -32], lambda: [0.022, 1.1], phiMax: 0.16 },
  motor: { kv: 4900, resistance: 0.19, frictionTorque: 6e-4, thermalResistance: 8 },
  pack: { series: 2, openCircuitVoltage: 3.9, cellResistance: 0.026, wireResistance: 0.014 },
  skirt: { perimeter: 0.36, area: 0.008, gap: 0.0006, land: 0.003, edge: "square" },
  vehicle: { mass: 0.9 },
};
const propeller = {
  kind: "propeller",
  diameter: 0.09,
  thrust: [0.12, 0.004],
  power: [0.06, -0.002],
  referenceReynolds: 20_000,
  chord: 0.012,
};

const post = (path: string, body: object) => freshBook().api.post(`/api/v1/${path}`).send(body);

interface Way {
  readonly handle: string;
  readonly state: string;
  readonly value: number | null;
  readonly effects: Readonly<Record<string, unknown>> | null;
}

const wayOf = (body: { ways: Way[] }, handle: string) => body.ways.find((way) => way.handle === handle);

describe("POST /ways", () => {
  it("of a build given inline: answers in the documented shape, nothing more", async () => {
    const { body } = await post("ways", { ...crawler, attitude: 180, targetMargin: 2, cell }).expect(200);
    expect(waysResponse.parse(body)).toEqual(body);
    expect(wayOf(body, "mass")?.state).toBe("does");
    expect(wayOf(body, "wheelFriction")?.state).toBe("never");
    expect(wayOf(body, "series")?.effects?.runTime).not.toBeNull();
  });

  it("of a build with a margin to spare and its cell: what a controller would save, as POST /rundown with keep", async () => {
    const light = { ...crawler, vehicle: { mass: 0.4 }, pack: { ...crawler.pack, openCircuitVoltage: 4.18 } };
    const asked = { attitude: 90, mode: "driving", targetMargin: 1.5 };
    const { body } = await post("ways", { ...light, ...asked, cell }).expect(200);
    expect(waysResponse.parse(body)).toEqual(body);
    const { openCircuitVoltage: _full, cellResistance: _of, ...wiring } = light.pack;
    const run = { ...light, pack: { ...wiring, cell }, keep: body.kept.keep };
    const { body: followed } = await post("rundown", run).expect(200);
    expect(body.kept.kept).toBeCloseToRelative(followed.end.time, 1e-6);
    expect(body.kept.keeps).toBeCloseToRelative(followed.keep.fullThrottleFrom ?? followed.end.time, 1e-6);
    expect(body.kept.kept).toBeGreaterThan(body.kept.now);
    const { body: without } = await post("ways", { ...light, ...asked }).expect(200);
    expect(without.kept).toBeNull();
  });

  it("at the value it answers with: /predict gives the target margin", async () => {
    const { body } = await post("ways", { ...crawler, attitude: 180, targetMargin: 2 });
    const mass = wayOf(body, "mass")?.value;
    const predicted = await post("predict", { ...crawler, vehicle: { mass } });
    expect(predicted.body.attitudes[2].parked.margin).toBeCloseToRelative(2, 1e-9);
  });

  it("with optional parts left out or given as their defaults: the same", async () => {
    const plain = await post("ways", crawler);
    const spelled = await post("ways", { ...crawler, attitude: "worst", mode: "parked", targetMargin: 1.5 });
    expect(spelled.body).toEqual(plain.body);
  });

  it("of a propeller without a skirt: no gap, no area", async () => {
    const { skirt: _skirt, ...rest } = crawler;
    const { body } = await post("ways", { ...rest, rotor: propeller }).expect(200);
    expect(waysResponse.parse(body)).toEqual(body);
    expect(wayOf(body, "gap")).toBeUndefined();
  });

  it("on the floor, where no pull is needed: margin null, every handle already does", async () => {
    const { body } = await post("ways", { ...crawler, attitude: 0 }).expect(200);
    expect(body.margin).toBeNull();
    expect(new Set(body.ways.map(({ state }: Way) => state))).toEqual(new Set(["already"]));
  });

  it("of the worked example in docs/method/ways.md: gives what is printed there", async () => {
    const { request, answer } = workedExample("ways");
    const { body } = await post("ways", request).expect(200);
    expectPrinted(body, answer);
  });

  it.each([
    ["attitude", { attitude: 200 }],
    ["attitude", { attitude: "upside down" }],
    ["mode", { mode: "flying" }],
    ["targetMargin", { targetMargin: 0 }],
    ["cell.capacity", { cell: { ...cell, capacity: 0 } }],
    ["skirt", { skirt: null }],
    ["vehicle.mass", { vehicle: { mass: -1 } }],
    ["uncertainty", { uncertainty: {} }],
  ])("with a wrong %s: 400 that names it", async (path, change) => {
    const { body } = await post("ways", { ...crawler, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toContain(path);
  });

  it("of a propeller whose coefficients take no power: 422 that names them", async () => {
    const rotor = { ...propeller, power: [-0.06, 0] };
    const { body } = await post("ways", { ...crawler, rotor }).expect(422);
    expect(body.error.fields[0].path).toBe("rotor.power");
  });
});

describe("POST /sensitivities", () => {
  it("of a build given inline: answers in the documented shape, nothing more", async () => {
    const { body } = await post("sensitivities", { ...crawler, attitude: 180 }).expect(200);
    expect(sensitivitiesResponse.parse(body)).toEqual(body);
    const mass = body.sensitivities.find(({ path }: { path: string }) => path === "vehicle.mass");
    expect(mass.value).toBe(0.9);
    expect(mass.elasticity).toBeCloseToRelative(-1, 1e-9);
  });

  it("on the floor: no figures, and why", async () => {
    const { body } = await post("sensitivities", { ...crawler, attitude: 0 }).expect(200);
    expect(body).toMatchObject({ margin: null, sensitivities: [], warnings: [{ code: "no-pull-needed" }] });
  });

  it("of the worked example in docs/method/sensitivities.md: gives what is printed there", async () => {
    const { request, answer } = workedExample("sensitivities");
    const { body } = await post("sensitivities", request).expect(200);
    expectPrinted(body, answer);
  });

  it.each([
    ["attitude", { attitude: -1 }],
    ["mode", { mode: "" }],
    ["skirt", { skirt: undefined }],
    ["targetMargin", { targetMargin: 1.5 }],
    ["rotor.diameter", { rotor: { ...crawler.rotor, diameter: 0 } }],
  ])("with a wrong %s: 400 that names it", async (path, change) => {
    const { body } = await post("sensitivities", { ...crawler, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toContain(path);
  });
});

describe("docs/api.md", () => {
  const text = readFileSync(new URL("../../docs/api.md", import.meta.url), "utf8");
  it.each(["ways", "sensitivities"])("its example of /%s: is answered", async (path) => {
    const found = new RegExp(`/api/v1/${path} [^']*'[^']*' -d '([^']*)'`).exec(text);
    const { body } = await post(path, JSON.parse(found?.[1] ?? "")).expect(200);
    expect(body.margin).toBeGreaterThan(0);
  });
});
