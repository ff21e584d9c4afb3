import { describe, expect, it } from "vitest";
import { predictResponse } from "#shared/model/api/predict.ts";
import { expectPrinted, workedExample } from "#tests/support/workedExample.ts";
import { freshBook } from "./support/api.ts";

const crawler = {
  rotor: { diameter: 0.044, psi: [1.05, -1.5, -32], lambda: [0.022, 1.1], phiMax: 0.16 },
  motor: { kv: 4900, resistance: 0.19, frictionTorque: 6e-4 },
  pack: { series: 2, openCircuitVoltage: 3.8, cellResistance: 0.026, wireResistance: 0.014 },
  skirt: {
    perimeter: 0.36,
    area: 0.008,
    gap: 0.0006,
    land: 0.003,
    edge: "square",
    openings: [{ area: 4e-6 }],
  },
  vehicle: { mass: 0.9 },
};
const uncertainty = {
  "skirt.gap": 5e-5,
  "skirt.openings.0.area": 4e-7,
  "vehicle.wheelFriction": 0.05,
  "rotor.psi.0": 0.02,
  "air.temperature": 3,
};

const post = (body: object) => freshBook().api.post("/api/v1/predict").send(body);

describe("POST /predict with uncertainties", () => {
  it("adds the uncertainty to the prediction, in the documented shape, and changes nothing else", async () => {
    const plain = await post(crawler).expect(200);
    const { body } = await post({ ...crawler, uncertainty }).expect(200);
    expect(predictResponse.parse(body)).toEqual(body);
    const { doubt, ...rest } = body;
    expect(rest).toEqual(plain.body);
    expect(plain.body).not.toHaveProperty("doubt");
    const angles = doubt.attitudes.map(({ angle }: { angle: number }) => angle);
    expect(angles).toEqual([0, 90, 180, plain.body.worst.driving.angle]);
    for (const [i, attitude] of plain.body.attitudes.entries()) {
      const { p5, p50, p95 } = doubt.attitudes[i].driving;
      if (attitude.driving.margin === null) expect([p5, p50, p95]).toEqual([null, null, null]);
      else {
        expect(p5).toBeLessThan(attitude.driving.margin);
        expect(p95).toBeGreaterThan(attitude.driving.margin);
      }
    }
    expect(doubt.shares.map(({ path }: { path: string }) => path).sort()).toEqual(
      Object.keys(uncertainty).sort(),
    );
  });

  it("with the documented defaults left out or spelled: the same; with another seed: another", async () => {
    const { body } = await post({ ...crawler, uncertainty });
    const spelled = await post({ ...crawler, uncertainty, samples: 2048, seed: 1 });
    const other = await post({ ...crawler, uncertainty, seed: 2 });
    expect(spelled.body.doubt).toEqual(body.doubt);
    expect(other.body.doubt).not.toEqual(body.doubt);
  });

  it("of none at all: every quantile is the margin itself", async () => {
    const { body } = await post({ ...crawler, uncertainty: {} }).expect(200);
    expect(body.doubt.shares).toEqual([]);
    const { p5, p95 } = body.doubt.attitudes[1].driving;
    expect(p5).toBe(p95);
    expect(p5).toBeCloseToRelative(body.attitudes[1].driving.margin, 1e-9);
  });

  it("of a propeller: takes the paths of a propeller", async () => {
    const { skirt: _skirt, ...rest } = crawler;
    const rotor = {
      kind: "propeller",
      diameter: 0.09,
      thrust: [0.12, 0.004],
      power: [0.06, -0.002],
      referenceReynolds: 20_000,
      chord: 0.012,
    };
    const { body } = await post({ ...rest, rotor, uncertainty: { "rotor.thrust.0": 0.006 } }).expect(200);
    expect(predictResponse.parse(body)).toEqual(body);
    // Thrust is in proportion to C_T, whose 5 % and 95 % lie 1.645 uncertainties off (normal table): 8.2 % either way.
    const { p5, p50, p95 } = body.doubt.attitudes[2].driving;
    expect((p95 - p5) / p50).toBeGreaterThan(0.14);
    expect((p95 - p5) / p50).toBeLessThan(0.19);
  });

  it.each([0, 1])(
    "of worked example %s in docs/method/uncertainty.md: gives what is printed there",
    async (pair) => {
      const { request, answer } = workedExample("uncertainty", pair);
      const { body } = await post(request).expect(200);
      expectPrinted(body, answer);
    },
  );

  it.each([
    ["uncertainty.skirt.gpa", { uncertainty: { "skirt.gpa": 1e-5 } }],
    ["uncertainty.gap", { uncertainty: { gap: 1e-5 } }],
    ["uncertainty.vehicle.driven", { uncertainty: { "vehicle.driven": 1 } }],
    ["uncertainty.pack.series", { uncertainty: { "pack.series": 1 } }],
    ["uncertainty.rotor.psi", { uncertainty: { "rotor.psi": 1 } }],
    ["uncertainty.rotor.psi.3", { uncertainty: { "rotor.psi.3": 1 } }],
    ["uncertainty.rotor.psi.length", { uncertainty: { "rotor.psi.length": 1 } }],
    ["uncertainty.motor.thermalResistance", { uncertainty: { "motor.thermalResistance": 1 } }],
    ["uncertainty.seed", { uncertainty: { seed: 1 }, seed: 3 }],
    ["uncertainty.skirt.gap", { uncertainty: { "skirt.gap": -1e-5 } }],
    ["uncertainty.skirt.gap", { uncertainty: { "skirt.gap": "0.05 mm" } }],
    ["uncertainty.__proto__.x", { uncertainty: JSON.parse('{ "__proto__.x": 1 }') }],
    ["uncertainty", { uncertainty: 0.1 }],
    ["samples", { uncertainty, samples: 10 }],
    ["samples", { uncertainty, samples: 30_000 }],
    ["samples", { uncertainty, samples: 200.5 }],
    ["seed", { uncertainty, seed: -1 }],
  ])("with a wrong %s: 400 that names it", async (path, change) => {
    const { body } = await post({ ...crawler, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });

  it("with numbers that are uncertain together: one share a group, the samples' error and the point's spread beside it", async () => {
    const correlated = [
      {
        paths: ["motor.kv", "motor.resistance"],
        covariance: [
          [9000, 0.9],
          [0.9, 1e-4],
        ],
      },
    ];
    const { body } = await post({ ...crawler, uncertainty, correlated }).expect(200);
    expect(predictResponse.parse(body)).toEqual(body);
    const { shares, samplingError, attitudes, point, suction } = body.doubt;
    expect(shares.map(({ path }: { path: string }) => path)).toContain("motor.kv + motor.resistance");
    expect(shares.length).toBe(6);
    expect(samplingError.map(({ angle }: { angle: number }) => angle)).toEqual(
      attitudes.map(({ angle }: { angle: number }) => angle),
    );
    expect(point.pressure.p5).toBeLessThan(body.point.pressure);
    expect(point.pressure.p95).toBeGreaterThan(body.point.pressure);
    expect(suction.p50).toBeCloseToRelative(body.suction, 0.02);
    const alone = await post({ ...crawler, correlated }).expect(200);
    expect(alone.body.doubt.shares.length).toBe(1);
  });

  const pair = (paths: string[], covariance: number[][]) => ({ correlated: [{ paths, covariance }] });
  const [gap, mass] = ["skirt.gap", "vehicle.mass"];

  it.each([
    [
      "correlated.0.paths.1",
      pair(
        [gap, "vehicle.maß"],
        [
          [1e-10, 0],
          [0, 1e-4],
        ],
      ),
    ],
    [
      "correlated.0.paths.1",
      pair(
        [gap, gap],
        [
          [1e-10, 0],
          [0, 1e-10],
        ],
      ),
    ],
    ["correlated.0.paths.0", { uncertainty: { [mass]: 0.01 }, ...pair([mass], [[1e-4]]) }],
    ["correlated.0.covariance", pair([gap, mass], [[1e-10]])],
    [
      "correlated.0.covariance.1.0",
      pair(
        [gap, mass],
        [
          [1e-10, 1e-8],
          [0, 1e-4],
        ],
      ),
    ],
    [
      "correlated.0.covariance.1.1",
      pair([gap, mass], [
        [1e-10, 0],
        [0, "small"],
      ] as number[][]),
    ],
    ["correlated.0.paths", pair([], [])],
  ])("with a wrong %s: 400 that names it", async (path, change) => {
    const { body } = await post({ ...crawler, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });

  it("with a matrix that no numbers can have as their covariance: 422 that names the place", async () => {
    const { body } = await post({
      ...crawler,
      ...pair(
        [gap, mass],
        [
          [1e-10, 2e-7],
          [2e-7, 1e-4],
        ],
      ),
    }).expect(422);
    expect(body.error.fields[0].path).toBe("correlated.0.covariance.1.0");
    expect(body.error.message).toContain("positive semi-definite");
  });

  it("with an unknown path: says which it read and what a path looks like", async () => {
    const { body } = await post({ ...crawler, uncertainty: { "skirt.gpa": 1e-5 } }).expect(400);
    expect(body.error.message).toContain('"skirt.gpa"');
    expect(body.error.message).toContain('"skirt.gap"');
  });
});
