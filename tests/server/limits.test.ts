import { describe, expect, it } from "vitest";
import { limitsResponse } from "#shared/model/api/limits.ts";
import { expectPrinted, workedExample } from "#tests/support/workedExample.ts";
import { freshBook } from "./support/api.ts";

const { request, answer } = workedExample("limits");
const post = (body: object) => freshBook().api.post("/api/v1/limits").send(body);
const without = (key: string) =>
  Object.fromEntries(Object.entries(request).filter(([name]) => name !== key)) as Record<string, object>;

describe("POST /limits", () => {
  it("answers the worked example of docs/method/limits.md in the documented shape, with the printed numbers", async () => {
    const { body } = await post(request).expect(200);
    expect(limitsResponse.parse(body)).toEqual(body);
    expectPrinted(body, answer);
  });

  it("says what isn't known, with nothing but the build", async () => {
    const bare = {
      ...without("rotorBody"),
      motorLimits: undefined,
      rotorMass: undefined,
      fallHeight: undefined,
    };
    const { body } = await post(bare).expect(200);
    const unknown = body.limits.filter((limit: { verdict: string }) => limit.verdict === "unknown");
    expect(unknown.map(({ key }: { key: string }) => key)).toEqual([
      "winding",
      "motor-voltage",
      "motor-current",
      "rotor-speed",
    ]);
    for (const { missing } of unknown) expect(missing).toMatch(/\.$/);
    expect(body.overVoltage).toBeNull();
  });

  it("of a rotor that stands, gives numbers that JSON has", async () => {
    const still = { ...request, supply: { duty: 0 } };
    const { body } = await post(still).expect(200);
    expect(limitsResponse.parse(body)).toEqual(body);
    expect(body.rotor).toMatchObject({ speed: 0, factor: null });
  });

  it.each([
    [
      "rotorBody.boreDiameter",
      { rotorBody: { density: 1240, poisson: 0.36, strength: 25e6, boreDiameter: 0.05 } },
    ],
    ["charge", { charge: 1.2 }],
    ["motorLimits.windingLimit", { motorLimits: { windingLimit: 120 } }],
    ["rotorBody.poisson", { rotorBody: { density: 1240, poisson: 0.6, strength: 25e6, boreDiameter: 0 } }],
    ["fallHeight", { fallHeight: -1 }],
    ["skirt", { skirt: null }],
  ])("refuses %s by its path, with %o", async (path, change) => {
    const { body } = await post({ ...request, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toContain(path);
  });
});
