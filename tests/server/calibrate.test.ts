import { describe, expect, it } from "vitest";
import { calibrateResponse } from "#shared/model/api/calibrate.ts";
import { normals, pulledOnce, RIG, rigAt } from "#tests/support/calibrationRig.ts";
import { freshBook } from "./support/api.ts";

const TRUTH = { gap: 4.5e-4, friction: 0.62, scatter: 0.05 };
const prior = { gap: { mean: 6e-4, sd: 2e-4 }, friction: { mean: 0.7, sd: 0.15 } };
const normal = normals(1);
const pulls = (["straight-off", "ceiling", "along"] as const).flatMap((direction) =>
  [4.1, 3.9].map((voltage) => pulledOnce(direction, voltage, TRUTH, normal)),
);

const post = (body: object) => freshBook().api.post("/api/v1/calibrate").send(body);

describe("POST /calibrate", () => {
  it("of pulls made at a known gap and friction: finds both within their intervals, in the documented shape", async () => {
    const { body } = await post({ prior, pulls }).expect(200);
    expect(calibrateResponse.parse(body)).toEqual(body);
    expect(body.gap.interval[0]).toBeLessThan(TRUTH.gap);
    expect(body.gap.interval[1]).toBeGreaterThan(TRUTH.gap);
    expect(body.friction.interval[0]).toBeLessThan(TRUTH.friction);
    expect(body.friction.interval[1]).toBeGreaterThan(TRUTH.friction);
    expect(body.residuals).toHaveLength(pulls.length);
    expect(body.warnings).toEqual([]);
  });

  it("with optional parts left out or given as their defaults: the same", async () => {
    const [pull] = pulls;
    const { air: _air, supply: _supply, ...short } = pull.input;
    const spelled = await post({ prior, pulls: [pull], leaks: [], scatter: 0.05 });
    const plain = await post({ prior, pulls: [{ ...pull, input: short }] });
    expect(plain.body).toEqual(spelled.body);
  });

  it("with a leak reading beside the pulls: narrows the gap", async () => {
    const { skirt, air } = RIG;
    const alone = await post({ prior, pulls }).expect(200);
    const leaks = [1, 2, 3].map((k) => ({
      input: { skirt, air },
      pressure: 100 * k,
      flow: 1.1e-3 * Math.sqrt(k),
    }));
    const { body } = await post({ prior, pulls, leaks }).expect(200);
    expect(body.leakResiduals).toHaveLength(3);
    expect(body.gap.sd).toBeLessThan(alone.body.gap.sd);
  });

  it("without any test: the prior, and what to measure next", async () => {
    const { body } = await post({ prior, pulls: [] }).expect(200);
    expect(calibrateResponse.parse(body)).toEqual(body);
    expect(body.friction).toBeNull();
    expect(body.warnings.map(({ code }: { code: string }) => code)).toEqual(["no-data", "friction-not-told"]);
  });

  it.each([
    ["held above letGo", { held: 8, letGo: 7 }],
    ["a motor that does not turn", { input: rigAt(0.01) }],
  ])("with %s: 422 that names the pull", async (_, change) => {
    const { body } = await post({ prior, pulls: [pulls[0], { ...pulls[1], ...change }] }).expect(422);
    expect(body.error.fields[0].path).toBe("pulls.1.held");
  });

  it("with a size correction that leaves no efficiency: 422 that names it in its pull", async () => {
    const { rotor } = pulls[1].input;
    const sizeCorrection = { testedDiameter: 5, testedTipSpeed: 1000 };
    const input = { ...pulls[1].input, rotor: { ...rotor, lambda: [0.2, 0.3], sizeCorrection } };
    const { body } = await post({ prior, pulls: [pulls[0], { ...pulls[1], input }] }).expect(422);
    expect(body.error.fields[0].path).toBe("pulls.1.input.rotor.sizeCorrection");
  });

  it.each([
    ["prior.gap.sd", { prior: { ...prior, gap: { mean: 6e-4, sd: 0 } } }],
    ["pulls.0.direction", { pulls: [{ ...pulls[0], direction: "sideways" }] }],
    ["pulls.0.input.rotor", { pulls: [{ ...pulls[0], input: { ...pulls[0].input, rotor: undefined } }] }],
    ["scatter", { scatter: "5 %" }],
    ["leaks.0.flow", { leaks: [{ input: { skirt: RIG.skirt }, pressure: 10, flow: 0 }] }],
  ])("with a wrong %s: 400 that names it", async (path, change) => {
    const { body } = await post({ prior, pulls, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
  });
});
