import { describe, expect, it } from "vitest";
import { fitUpResponse } from "#shared/model/api/fitUp.ts";
import { freshBook } from "./support/api.ts";

const post = (body: object) => freshBook().api.post("/api/v1/fit-up").send(body);

const SPACE = { nominal: 0.024, tolerance: 2e-4 };
const PARTS = [
  { name: "motor", nominal: 0.015, tolerance: 1e-4 },
  { name: "rotor", nominal: 0.0075, tolerance: 2e-4 },
  { nominal: 5e-4, tolerance: 5e-5, quantity: 2 },
];

describe("POST /fit-up", () => {
  it("gives clearance, limits, chance and contributions in the documented shape", async () => {
    const { body } = await post({ space: SPACE, parts: PARTS }).expect(200);
    expect(fitUpResponse.parse(body)).toEqual(body);
    // By hand, in mm: 24 − 15 − 7.5 − 1 = 0.5; 0.2 + 0.1 + 0.2 + 0.1 = 0.6; √(0.04 + 0.01 + 0.04 + 0.005) = 0.308 221.
    expect(body.clearance).toBeCloseToRelative(5e-4, 1e-12);
    expect(body.worstCase).toEqual([expect.closeTo(-1e-4, 12), expect.closeTo(1.1e-3, 12)]);
    expect(body.rss).toEqual([expect.closeTo(1.91779e-4, 9), expect.closeTo(8.08221e-4, 9)]);
    expect(body.verdict).toBe("may-not-close");
    expect(
      body.contributions.map(({ path, name }: { path: string; name: string | null }) => [path, name]),
    ).toEqual([
      ["space", null],
      ["parts.0", "motor"],
      ["parts.1", "rotor"],
      ["parts.2", null],
    ]);
    const shares = body.contributions.map(({ share }: { share: number }) => share);
    expect(shares.reduce((sum: number, share: number) => sum + share, 0)).toBeCloseToRelative(1, 1e-12);
  });

  it("says that a cover whose inside is lower than motor, rotor and clearances will not close", async () => {
    const { body } = await post({ space: { ...SPACE, nominal: 0.0225 }, parts: PARTS }).expect(200);
    expect(body).toMatchObject({ verdict: "will-not-close" });
    expect(body.clearance).toBeLessThan(0);
    expect(body.chance).toBeLessThan(1e-5);
  });

  it.each([
    ["space", { space: undefined }],
    ["space.tolerance", { space: { nominal: 0.01, tolerance: 0.02 } }],
    ["space.nominal", { space: { nominal: 0, tolerance: 0 } }],
    ["parts.0.tolerance", { parts: [{ nominal: 0.001, tolerance: 0.002 }] }],
    ["parts.0.nominal", { parts: [{ nominal: -0.001, tolerance: 0 }] }],
    ["parts.0.quantity", { parts: [{ nominal: 0.001, tolerance: 0, quantity: 0 }] }],
    ["parts.3.name", { parts: [...PARTS, PARTS[0]] }],
    ["parts", { parts: [] }],
    ["face", { face: 1 }],
  ])("refuses %s by its path, with %o", async (path, change) => {
    const { body } = await post({ space: SPACE, parts: PARTS, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toContain(path);
    expect(body.error.fields[0].message).toMatch(/allowed/);
  });
});
