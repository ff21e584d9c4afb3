import { describe, expect, it } from "vitest";
import { freshBook } from "./support/api.ts";

/** ψ rises by 0.0125 up to φ = 0.025: with no uncertainty it is a hump, with ±0.1 on the slope it isn't told from noise. */
const rotor = { diameter: 0.042, psi: [0.9, 1, -20], lambda: [0.02, 0.3], phiMax: 0.2 };
const build = {
  rotor,
  motor: { kv: 7800, resistance: 0.35, frictionTorque: 2e-4 },
  pack: { openCircuitVoltage: 4.1, cellResistance: 0.05 },
  skirt: { perimeter: 0.25, area: 0.004, gap: 0.0006, land: 0.003 },
  vehicle: { mass: 0.18 },
};
const within = (variance: number) => [
  [0, 0, 0],
  [0, variance, 0],
  [0, 0, 0],
];

describe("POST /predict, of a curve that rises a little", () => {
  it.each([
    ["no covariance", {}, true],
    ["a covariance that the rise is clear of", { psiCovariance: within(1e-4) }, true],
    ["a covariance that the rise lies within", { psiCovariance: within(1) }, false],
  ])("with %s: the hump is said or not", async (_, change, said) => {
    const { api } = freshBook();
    const { body } = await api
      .post("/api/v1/predict")
      .send({ ...build, rotor: { ...rotor, ...change } })
      .expect(200);
    const codes = body.warnings.map(({ code }: { code: string }) => code);
    expect(codes.includes("stall-hump")).toBe(said);
  });

  it("with a covariance that isn't square: 400 that names it", async () => {
    const { api } = freshBook();
    const { body } = await api
      .post("/api/v1/predict")
      .send({ ...build, rotor: { ...rotor, psiCovariance: [[1, 2], [3]] } })
      .expect(400);
    expect(body.error.fields[0].path).toBe("rotor.psiCovariance");
  });
});
