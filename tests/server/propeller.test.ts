import { describe, expect, it } from "vitest";
import { propellerFitResponse } from "#shared/model/api/fits.ts";
import { predictResponse } from "#shared/model/api/predict.ts";
import { freshBook } from "./support/api.ts";

const rotor = {
  kind: "propeller",
  diameter: 0.127,
  thrust: [0.12, 0],
  power: [0.06, 0],
  referenceReynolds: 40000,
  chord: 0.012,
};
const pressed = {
  rotor,
  motor: { kv: 2300, resistance: 0.12, frictionTorque: 3e-3 },
  pack: { series: 2, openCircuitVoltage: 3.8, cellResistance: 0.01 },
  skirt: null,
  vehicle: { mass: 0.3 },
};

describe("POST /predict, of a vehicle pressed on by a propeller", () => {
  it("answers with its thrust as the suction, in the documented shape", async () => {
    const { body } = await freshBook().api.post("/api/v1/predict").send(pressed).expect(200);
    expect(predictResponse.parse(body)).toEqual(body);
    expect(body.point.thrust).toBe(body.suction);
    expect(body.point.pressure).toBeNull();
  });

  it("takes no skirt at all as well; a ducted rotor needs one", async () => {
    const { skirt: _none, ...without } = pressed;
    await freshBook().api.post("/api/v1/predict").send(without).expect(200);
    const ducted = { diameter: 0.042, psi: [0.9, 0.1, -8], lambda: [0.02, 0.3], phiMax: 0.3 };
    const { body } = await freshBook()
      .api.post("/api/v1/predict")
      .send({ ...without, rotor: ducted })
      .expect(400);
    expect(body.error.fields[0].path).toBe("skirt");
  });

  it("names a ducted rotor's fields in words although its kind is left out", async () => {
    const ducted = { diameter: -0.042, psi: [0.9], lambda: [0.02], phiMax: 0.3 };
    const { body } = await freshBook()
      .api.post("/api/v1/predict")
      .send({ ...pressed, rotor: ducted })
      .expect(400);
    expect(body.error.fields).toContainEqual({
      path: "rotor.diameter",
      message: "Read -0.042; allowed: m, > 0, at most 5.",
    });
  });
});

describe("POST /fit/propeller", () => {
  it("answers in the documented shape", async () => {
    const rows = [10000, 14000, 18000].map((rpm) => ({
      rpm,
      thrust: 1.1e-8 * rpm ** 2,
      shaftPower: 8e-12 * rpm ** 3,
    }));
    const { body } = await freshBook()
      .api.post("/api/v1/fit/propeller")
      .send({ diameter: 0.127, rows })
      .expect(200);
    expect(propellerFitResponse.parse(body)).toEqual(body);
    // C_T = T/(ρn²D⁴) by hand at 10 000 rpm: 1.1 N / (1.2 · (1000/6)² · 0.127⁴)
    expect(body.thrust[0]).toBeCloseToRelative(1.1 / (1.2 * (1000 / 6) ** 2 * 0.127 ** 4), 1e-9);
  });
});
