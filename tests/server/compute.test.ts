import { describe, expect, it } from "vitest";
import {
  bleedResponse,
  leakFitResponse,
  motorFitResponse,
  pullFitResponse,
  rotorFitResponse,
} from "#shared/model/api/fits.ts";
import { predictResponse } from "#shared/model/api/predict.ts";
import { freshBook } from "./support/api.ts";

const crawler = {
  rotor: { diameter: 0.042, psi: [0.9, 0.1, -8], lambda: [0.02, 0.3], phiMax: 0.3 },
  motor: { kv: 7800, resistance: 0.35, frictionTorque: 2e-4 },
  pack: { openCircuitVoltage: 4.1, cellResistance: 0.05, wireResistance: 0.02 },
  skirt: { perimeter: 0.25, area: 0.004, gap: 0.0006, land: 0.003, edge: "square" },
  vehicle: { mass: 0.18 },
};

describe("POST /predict", () => {
  it("of a build given inline: answers in the documented shape, nothing more", async () => {
    const { body } = await freshBook().api.post("/api/v1/predict").send(crawler).expect(200);
    expect(predictResponse.parse(body)).toEqual(body);
    expect(body.point.pressure).toBeGreaterThan(0);
    expect(body.attitudes.map(({ angle }: { angle: number }) => angle)).toEqual([0, 90, 180]);
    // F_s is at least Δp·A: there is no jet, and the land only adds.
    expect(body.suction).toBeGreaterThanOrEqual(body.point.pressure * crawler.skirt.area);
  });

  it("with optional parts left out or given as their defaults: the same", async () => {
    const { api } = freshBook();
    const air = { temperature: 293.15, pressure: 101325, humidity: 0.5 };
    const supply = { duty: 1, driverResistance: 0, auxCurrent: 0 };
    const plain = await api.post("/api/v1/predict").send(crawler);
    const spelled = await api.post("/api/v1/predict").send({ ...crawler, air, supply });
    expect(spelled.body).toEqual(plain.body);
  });

  it.each([
    ["skirt.gap", { skirt: { ...crawler.skirt, gap: -1 } }],
    ["skirt.lossSum", { skirt: { ...crawler.skirt, lossSum: 1.5 } }],
    ["vehicle.mass", { vehicle: { mass: "180 g" } }],
    ["rotor.psi", { rotor: { ...crawler.rotor, psi: [-1] } }],
    ["motor.colour", { motor: { ...crawler.motor, colour: 1 } }],
    ["pack", { pack: undefined }],
    ["air.humidity", { air: { humidity: 50 } }],
  ])("with a wrong %s: 400 that names it", async (path, change) => {
    const { body } = await freshBook()
      .api.post("/api/v1/predict")
      .send({ ...crawler, ...change })
      .expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });
});

describe("POST /fit/rotor", () => {
  // Made from ψ = 0.9 − 8φ² at 24 000 rpm and 1.2 kg/m³ by the definitions of φ and ψ.
  const diameter = 0.042;
  const tipSpeed = (24_000 * Math.PI * diameter) / 60;
  const points = [0, 0.05, 0.1, 0.15, 0.2, 0.25].map((phi) => ({
    rpm: 24_000,
    flow: phi * (Math.PI / 4) * diameter ** 2 * tipSpeed,
    pressure: 0.5 * 1.2 * tipSpeed ** 2 * (0.9 - 8 * phi ** 2),
  }));

  it("of points on a parabola: gives the parabola back, in the documented shape", async () => {
    const request = { diameter, points, degree: 2 };
    const { body } = await freshBook().api.post("/api/v1/fit/rotor").send(request).expect(200);
    expect(rotorFitResponse.parse(body)).toEqual(body);
    expect(body.psi[0]).toBeCloseToRelative(0.9, 1e-9);
    expect(body.psi[2]).toBeCloseToRelative(-8, 1e-9);
  });

  it("of one point: 422 that says what to measure next", async () => {
    const request = { diameter, points: points.slice(0, 1) };
    const { body } = await freshBook().api.post("/api/v1/fit/rotor").send(request).expect(422);
    expect(body.error.code).toBe("not-enough-data");
    expect(body.error.fields).toHaveLength(1);
    expect(body.error.fields[0].message.length).toBeGreaterThan(20);
  });
});

describe("POST /fit/motor", () => {
  // V = R·I + ω/K_v with R = 0.35 Ω and K_v = 7800 rpm/V.
  const row = (voltage: number, current: number) => ({
    voltage,
    current,
    rpm: 7800 * (voltage - 0.35 * current),
  });

  it("of exact rows: gives the constants back, in the documented shape", async () => {
    const rows = [{ ...row(2, 0.2), noLoad: true }, { ...row(4, 0.25), noLoad: true }, row(4, 3), row(4, 8)];
    const { body } = await freshBook().api.post("/api/v1/fit/motor").send({ rows }).expect(200);
    expect(motorFitResponse.parse(body)).toEqual(body);
    expect(body.kv).toBeCloseToRelative(7800, 1e-9);
    expect(body.resistance).toBeCloseToRelative(0.35, 1e-9);
  });

  it("of rows at one load only: 422 that says what to measure next", async () => {
    const { body } = await freshBook()
      .api.post("/api/v1/fit/motor")
      .send({ rows: [row(3, 1)] })
      .expect(422);
    expect(body.error.code).toBe("not-enough-data");
  });
});

describe("POST /fit/leak", () => {
  // Q = 3·10⁻⁵·Δp^0.6
  const points = [50, 100, 200, 400].map((pressure) => ({ pressure, flow: 3e-5 * pressure ** 0.6 }));

  it("of points on a power law: gives the power law back, in the documented shape", async () => {
    const { body } = await freshBook().api.post("/api/v1/fit/leak").send({ points }).expect(200);
    expect(leakFitResponse.parse(body)).toEqual(body);
    expect(body.coefficient).toBeCloseToRelative(3e-5, 1e-6);
    expect(body.exponent).toBeCloseToRelative(0.6, 1e-6);
  });

  it("of one point: 422 that says what to measure next", async () => {
    const request = { points: points.slice(0, 1) };
    const { body } = await freshBook().api.post("/api/v1/fit/leak").send(request).expect(422);
    expect(body.error.code).toBe("not-enough-data");
  });
});

describe("POST /fit/pull", () => {
  it("of narrow brackets: gives their mean, in the documented shape", async () => {
    const trials = [4, 4.4, 3.6, 4.2, 3.8].map((force) => ({ held: force - 1e-4, letGo: force + 1e-4 }));
    const { body } = await freshBook().api.post("/api/v1/fit/pull").send({ trials }).expect(200);
    expect(pullFitResponse.parse(body)).toEqual(body);
    // The mean of 4, 4.4, 3.6, 4.2 and 3.8.
    expect(body.mean).toBeCloseToRelative(4, 1e-6);
    expect(body.median).toBeCloseToRelative(4, 1e-6);
  });

  it("of a load that let go below the one that held: 422 that names the trial", async () => {
    const trials = [
      { held: 4, letGo: 5 },
      { held: 4, letGo: 3 },
    ];
    const { body } = await freshBook().api.post("/api/v1/fit/pull").send({ trials }).expect(422);
    expect(body.error.fields[0].path).toMatch(/^trials\.1/);
  });
});

describe("POST /bleed", () => {
  const hole = { diameter: 0.01, thickness: 0.002, count: 2, dischargeCoefficient: 0.6 };

  it("of a calibrated plate: Q = N·C_d·A·√(2Δp/ρ), within the expansion of the air, in the documented shape", async () => {
    const { body } = await freshBook()
      .api.post("/api/v1/bleed")
      .send({ holes: [hole], pressure: 100 })
      .expect(200);
    expect(bleedResponse.parse(body)).toEqual(body);
    // 1.1992 kg/m³: moist air at 20 °C, 1013.25 hPa, 50 %. At 100 Pa the expansion takes below 0.1 % off.
    const expected = 2 * 0.6 * (Math.PI / 4) * 0.01 ** 2 * Math.sqrt((2 * 100) / 1.1992);
    expect(body.flow).toBeCloseToRelative(expected, 1e-3);
    expect(body.dischargeCoefficient).toBeCloseToRelative(0.6, 1e-12);
  });

  it("of two kinds of hole: the coefficient of all together weighs them by area", async () => {
    const holes = [hole, { ...hole, diameter: 0.005, count: 4, dischargeCoefficient: 0.9 }];
    const { body } = await freshBook().api.post("/api/v1/bleed").send({ holes, pressure: 100 }).expect(200);
    // Areas 2·10² and 4·5² stand as 2 to 1.
    expect(body.dischargeCoefficient).toBeCloseToRelative((2 * 0.6 + 0.9) / 3, 1e-12);
  });

  it.each([
    ["holes.0.diameter", { holes: [{ ...hole, diameter: -1 }], pressure: 100 }],
    ["holes", { holes: [], pressure: 100 }],
    ["pressure", { holes: [hole], pressure: -3 }],
    ["holes.0.edge", { holes: [{ ...hole, edge: "wavy" }], pressure: 3 }],
  ])("with a wrong %s: 400 that names it", async (path, request) => {
    const { body } = await freshBook().api.post("/api/v1/bleed").send(request).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });
});

describe("POST /predict, at duty 0", () => {
  it("answers that the rotor stands still", async () => {
    const { body } = await freshBook()
      .api.post("/api/v1/predict")
      .send({ ...crawler, supply: { duty: 0 } })
      .expect(200);
    expect(body.point).toBeNull();
    expect(body.warnings.map(({ code }: { code: string }) => code)).toContain("motor-stalled");
  });
});
