import { describe, expect, it } from "vitest";
import { predictResponse } from "#shared/model/api/predict.ts";
import { freshBook } from "./support/api.ts";

const crawler = {
  rotor: { diameter: 0.042, psi: [0.9, 0.1, -8], lambda: [0.02, 0.3], phiMax: 0.3 },
  motor: { kv: 7800, resistance: 0.35, frictionTorque: 2e-4 },
  pack: { openCircuitVoltage: 4.1, cellResistance: 0.05, wireResistance: 0.02 },
  skirt: { perimeter: 0.25, area: 0.004, gap: 0.0006, land: 0.003, edge: "square" },
  vehicle: { mass: 0.18 },
};
type Change = { readonly skirt?: object; readonly vehicle?: object };
const changed = ({ skirt, vehicle }: Change) => ({
  ...crawler,
  skirt: { ...crawler.skirt, ...skirt },
  vehicle: { ...crawler.vehicle, ...vehicle },
});

describe("POST /predict, the second season's keys", () => {
  it("left out, null or neutral: the same answer, no key more", async () => {
    const { api } = freshBook();
    const plain = await api.post("/api/v1/predict").send(crawler).expect(200);
    const neutral = changed({
      skirt: { joint: null, holes: [], honeycombs: [] },
      vehicle: { pullFactor: 1, verticalStiffness: null, gapLoad: null },
    });
    const { body } = await api.post("/api/v1/predict").send(neutral).expect(200);
    expect(body).toEqual(plain.body);
    expect(body.attitudes[0]).not.toHaveProperty("gaps");
  });

  it("pull factor: the suction goes with it", async () => {
    const { api } = freshBook();
    const plain = await api.post("/api/v1/predict").send(crawler);
    const { body } = await api.post("/api/v1/predict").send(changed({ vehicle: { pullFactor: 0.8 } }));
    expect(body.suction).toBeCloseToRelative(0.8 * plain.body.suction, 1e-12);
    expect(body.point).toEqual(plain.body.point);
  });

  it("joint, holes and honeycomb: each leaks more, in the documented shape", async () => {
    const { api } = freshBook();
    const plain = await api.post("/api/v1/predict").send(crawler);
    for (const skirt of [
      { joint: { span: 0.07, depth: 8e-4 } },
      { holes: [{ count: 2, diameter: 0.003, thickness: 0.002 }] },
      { honeycombs: [{ count: 40, diameter: 0.0012, length: 0.008 }] },
    ]) {
      const { body } = await api.post("/api/v1/predict").send(changed({ skirt })).expect(200);
      expect(predictResponse.parse(body)).toEqual(body);
      expect(body.point.flow).toBeGreaterThan(plain.body.point.flow);
      expect(body.suction).toBeLessThan(plain.body.suction);
    }
  });

  it("vertical stiffness: gaps at the limits, in the documented shape; sampled and run down as well", async () => {
    const { api } = freshBook();
    const giving = changed({ vehicle: { verticalStiffness: 9000 } });
    const { body } = await api
      .post("/api/v1/predict")
      .send({
        ...giving,
        uncertainty: { "vehicle.verticalStiffness": 900, "vehicle.pullFactor": 0.1 },
        samples: 256,
      })
      .expect(200);
    expect(predictResponse.parse(body)).toEqual(body);
    // Ceiling: lift-off at N = 0, the gap wider by m·g/k.
    expect(body.attitudes[2].gaps.liftOff).toBeCloseToRelative(6e-4 + (0.18 * 9.80665) / 9000, 1e-12);
    expect(body.doubt.shares).toHaveLength(2);
    for (const path of ["sensitivities", "ways"])
      await api
        .post(`/api/v1/${path}`)
        .send({ ...giving, attitude: 90 })
        .expect(200);
    const { openCircuitVoltage: _now, ...pack } = crawler.pack;
    const cell = {
      capacity: 1000,
      minimumVoltage: 3,
      resistance: 0.05,
      curve: [
        [0, 3],
        [1, 4.1],
      ],
    };
    const { cellResistance: _own, ...own } = pack;
    await api
      .post("/api/v1/rundown")
      .send({ ...giving, pack: { ...own, cell } })
      .expect(200);
  });

  it.each([
    [400, "vehicle.verticalStiffness", { vehicle: { verticalStiffness: 0 } }],
    [400, "vehicle.verticalStiffness", { vehicle: { verticalStiffness: -100 } }],
    [400, "vehicle.gapLoad", { vehicle: { verticalStiffness: 9000, gapLoad: -1 } }],
    [400, "vehicle.pullFactor", { vehicle: { pullFactor: 0 } }],
    [400, "skirt.joint.depth", { skirt: { joint: { span: 0.1, depth: -1e-4 } } }],
    [422, "skirt.joint.span", { skirt: { joint: { span: 0.26, depth: 1e-4 } } }],
    [
      400,
      "skirt.honeycombs.0.count",
      { skirt: { honeycombs: [{ count: 0, diameter: 1e-3, length: 0.01 }] } },
    ],
  ] as const)("answers %i and names %s where %o", async (status, path, change) => {
    const { body } = await freshBook().api.post("/api/v1/predict").send(changed(change)).expect(status);
    const fields = body.error?.fields ?? body.fields;
    expect(fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });
});

describe("a surface's joint", () => {
  const joint = { depth: 1e-3, width: 5e-3 };
  const post = (change: object) =>
    freshBook()
      .api.post("/api/v1/surfaces")
      .send({ name: "Pane", joints: [{ ...joint, ...change }] });

  it("may say how well its depth and width are known, in metres", async () => {
    const known = { depthUncertainty: 1e-4, widthUncertainty: 0 };
    const { body } = await post(known).expect(201);
    expect(body.data.joints[0]).toEqual({ ...joint, ...known, met: "either" });
  });

  it.each([
    ["depthUncertainty", -1e-4],
    ["depthUncertainty", "0.1 mm"],
    ["widthUncertainty", 2],
    ["depth", -1e-3],
  ])("refuses a %s of %j by its path, and stores nothing", async (key, value) => {
    const { body } = await post({ [key]: value }).expect(400);
    expect(body.error.fields.map(({ path }: { path: string }) => path)).toEqual([`joints.0.${key}`]);
  });
});
