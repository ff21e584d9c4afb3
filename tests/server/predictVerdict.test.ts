import { describe, expect, it } from "vitest";
import type { z } from "zod";
import type { predictResponse } from "#shared/model/api/predict.ts";
import { expectPrinted, workedExample } from "#tests/support/workedExample.ts";
import { freshBook } from "./support/api.ts";

/** An invented crawler that holds at 1.6 × or so. */
const crawler = {
  rotor: { diameter: 0.042, psi: [0.9, 0.1, -8], lambda: [0.02, 0.3], phiMax: 0.3 },
  motor: { kv: 7800, resistance: 0.35, frictionTorque: 2e-4 },
  pack: { openCircuitVoltage: 4.1, cellResistance: 0.05, wireResistance: 0.02 },
  skirt: { perimeter: 0.25, area: 0.004, gap: 0.0003, land: 0.003, edge: "square" },
  vehicle: { mass: 0.15 },
};

type PredictResponse = z.output<typeof predictResponse>;
type Body = Record<string, unknown> & typeof crawler;
const predicted = async (change: object = {}): Promise<PredictResponse> =>
  (
    await freshBook()
      .api.post("/api/v1/predict")
      .send({ ...crawler, ...change })
      .expect(200)
  ).body;
const stateOf = async (change: object) => (await predicted(change)).verdict.state;
const least = ({ worst }: PredictResponse) =>
  Math.min(worst.parked.margin ?? Number.POSITIVE_INFINITY, worst.driving.margin ?? Number.POSITIVE_INFINITY);
const vehicle = (mass: number) => ({ vehicle: { mass } });

/** Just past a threshold and just within it [-]. */
const [PAST, WITHIN] = [1 + 1e-6, 1 - 1e-6];

describe("POST /predict, its verdict", () => {
  it("holds, in exactly the keys of the contract, with the least margin and its angle", async () => {
    const body = await predicted(vehicle(0.1));
    expect(Object.keys(body.verdict)).toEqual(["state", "reason", "angle", "margin"]);
    expect(body.verdict).toMatchObject({
      state: "holds",
      margin: least(body),
      angle: body.worst.driving.angle,
    });
    expect(body.verdict.reason).toMatch(/^Holds everywhere it has to go/);
  });

  it("falls from where the least margin passes 1, which a heavier vehicle's does in proportion", async () => {
    // F_required is proportional to the mass, so the margin is to its inverse.
    const light = await predicted(vehicle(0.1));
    const limit = 0.1 * least(light);
    expect(await stateOf(vehicle(limit * PAST))).toBe("falls");
    expect(await stateOf(vehicle(limit * WITHIN))).toBe("tight");
  });

  it("falls where parked it holds and it can't climb, and says so", async () => {
    const rear = { mass: 0.32, driven: "rear", wheelFriction: 0.7 };
    const { verdict, worst } = await predicted({ vehicle: rear });
    expect(worst.parked.margin).toBeGreaterThan(1);
    expect(worst.driving.margin).toBeLessThan(1);
    expect(verdict).toMatchObject({ state: "falls", margin: worst.driving.margin });
    expect(verdict.reason).toMatch(/^Can't climb/);
  });

  it("is tight from where the least margin passes the target, 1.5 unless given", async () => {
    const light = await predicted(vehicle(0.1));
    const limit = (0.1 * least(light)) / 1.5;
    expect(await stateOf(vehicle(limit * PAST))).toBe("tight");
    expect(await stateOf(vehicle(limit * WITHIN))).toBe("holds");
    const asked = (share: number) => stateOf({ ...vehicle(0.1), targetMargin: least(light) * share });
    expect(await asked(PAST)).toBe("tight");
    expect(await asked(WITHIN)).toBe("holds");
  });

  it("is unsure from a chance of holding of 95 % down", async () => {
    // It holds while the mass is below 1.6 times itself: chance of holding = Φ(0.6/relative u); the cut at a mass of 0 takes less than 0.001.
    const mass = (0.1 * least(await predicted(vehicle(0.1)))) / 1.6;
    const sampled = (deviations: number) =>
      predicted({ ...vehicle(mass), uncertainty: { "vehicle.mass": (0.6 * mass) / deviations } });
    const doubtful = await sampled(1.5);
    expect(doubtful.verdict.state).toBe("unsure");
    expect(doubtful.verdict.reason).toMatch(/^Not sure: the chance of holding on the overhang is 9[34]/);
    expect((await sampled(1.85)).verdict.state).toBe("holds");
  });

  it("burns from where the winding settles past its limit", async () => {
    const motor = { ...crawler.motor, thermalResistance: 20 };
    const { point } = await predicted({ motor });
    const settles = point?.windingTemperature ?? 0;
    const at = (share: number) =>
      stateOf({ ...vehicle(0.1), motor, motorLimits: { windingLimit: settles * share } });
    expect(await at(WITHIN)).toBe("burns");
    expect(await at(PAST)).toBe("holds");
  });

  it("burns past the 155 °C of common wire where no limit is given, and keeps angle and margin back", async () => {
    const { verdict, point } = await predicted({ motor: { ...crawler.motor, thermalResistance: 150 } });
    expect(point?.windingTemperature).toBeGreaterThan(428.15);
    expect(Object.keys(verdict)).toEqual(["state", "reason"]);
    expect(verdict.state).toBe("burns");
  });

  // σ = (ρω²/4)[(3 + ν)r_o² + (1 − ν)r_i²], Timoshenko & Goodier, art. 32.
  const stressAt = (speed: number) => ((1240 * speed ** 2) / 4) * (3.36 * 0.021 ** 2 + 0.64 * 0.00075 ** 2);
  const body = (strength: number) => ({
    rotorBody: { density: 1240, poisson: 0.36, strength, boreDiameter: 0.0015 },
  });

  it("bursts from where the stress at its speed passes its strength", async () => {
    const { point } = await predicted();
    const stress = stressAt(point?.speed ?? 0);
    const { verdict } = await predicted({ ...vehicle(0.1), ...body(stress * WITHIN) });
    expect(verdict.state).toBe("bursts");
    expect(Object.keys(verdict)).toEqual(["state", "reason"]);
    expect(await stateOf({ ...vehicle(0.1), ...body(stress * PAST) })).toBe("over-rating");
  });

  it("is over its safe speed down to a strength of four times the stress", async () => {
    const { point } = await predicted();
    const stress = stressAt(point?.speed ?? 0);
    expect(await stateOf({ ...vehicle(0.1), ...body(4 * stress * WITHIN) })).toBe("over-rating");
    expect(await stateOf({ ...vehicle(0.1), ...body(4 * stress * PAST) })).toBe("holds");
  });

  it.each<[string, (point: Record<string, number>, share: number) => object]>([
    ["motor's voltage", ({ packVoltage }, share) => ({ motorLimits: { ratedVoltage: packVoltage / share } })],
    ["motor's current", ({ motorCurrent }, share) => ({ motorLimits: { maxCurrent: motorCurrent / share } })],
    ["cell's current", ({ packCurrent }, share) => ({ cellLimits: { maxCurrent: packCurrent / share } })],
    [
      "cell's least voltage",
      ({ packCurrent }, share) => ({ cellLimits: { minimumVoltage: (4.1 - 0.05 * packCurrent) * share } }),
    ],
  ])("is over the %s from its limit on", async (_what, allowed) => {
    const { point } = await predicted();
    const at = (share: number) =>
      stateOf({ ...vehicle(0.1), ...allowed(point as unknown as Record<string, number>, share) });
    expect(await at(PAST)).toBe("over-rating");
    expect(await at(WITHIN)).toBe("holds");
  });

  it("takes the worst where several are there: 7 × the pull, and a rotor that bursts", async () => {
    const { verdict, worst } = await predicted({ ...vehicle(0.02), ...body(1e6) });
    expect(worst.parked.margin).toBeGreaterThan(7);
    expect(verdict.state).toBe("bursts");
    expect(verdict.reason).not.toMatch(/holds/i);
  });

  it.each<[string, object]>([
    ["targetMargin", { targetMargin: 0.9 }],
    ["motorLimits.windingLimit", { motorLimits: { windingLimit: 110 } }],
    ["cellLimits.most", { cellLimits: { most: 9 } }],
    ["rotorBody.boreDiameter", { rotorBody: { ...body(1e7).rotorBody, boreDiameter: 0.042 } }],
    ["uncertainty.rotorBody.strength", { ...body(1e7), uncertainty: { "rotorBody.strength": 1e6 } }],
  ])("with a wrong %s: 400 that names it", async (path, change) => {
    const wrong: Body = { ...crawler, ...change };
    const { body: answer } = await freshBook().api.post("/api/v1/predict").send(wrong).expect(400);
    expect(answer.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });

  it("of the worked example in docs/method/verdict.md: what is printed there", async () => {
    const { request, answer } = workedExample("verdict");
    const { body } = await freshBook().api.post("/api/v1/predict").send(request).expect(200);
    expectPrinted(body, answer);
  });
});
