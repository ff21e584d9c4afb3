import { describe, expect, it } from "vitest";
import { expectPrinted, workedExample } from "#tests/support/workedExample.ts";
import { freshBook } from "./support/api.ts";

const { request, answer } = workedExample("power-cut");
const asked = (path: string, change: object = {}) =>
  freshBook()
    .api.post(`/api/v1/${path}`)
    .send({ ...request, ...change });

describe("POST /power-cut", () => {
  it("of the worked example in docs/method/power-cut.md: what is printed there", async () => {
    expectPrinted((await asked("power-cut").expect(200)).body, answer);
  });

  it.each([0, -1e-6, null, "much"])("with an inertia of %s: 400 that names it", async (inertia) => {
    const { body } = await asked("power-cut", { inertia }).expect(400);
    expect(body.error.fields[0].path).toBe("inertia");
  });

  it("without an inertia, or with an unknown key: 400", async () => {
    await asked("power-cut", { inertia: undefined }).expect(400);
    await asked("power-cut", { momentum: 1 }).expect(400);
  });

  it("of a motor that can't overcome its friction: holds nothing, and never will", async () => {
    const motor = { kv: 7800, resistance: 0.35, frictionTorque: 1 };
    const { body } = await asked("power-cut", { motor }).expect(200);
    const wall = body.attitudes.find((each: { angle: number }) => each.angle === 90);
    expect(wall).toEqual({ angle: 90, parked: 0, driving: 0 });
    expect(body.toHold).toBeNull();
  });
});
