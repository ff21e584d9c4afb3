import { describe, expect, it } from "vitest";
import { swapsResponse } from "#shared/model/api/swaps.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { freshBook } from "./support/api.ts";

const post = (body: object) => freshBook().api.post("/api/v1/swaps").send(body);

/** Invented. */
const LINES = [
  { name: "body", mass: 0.04, uncertainty: 0.003, alternatives: [] },
  {
    name: "motor",
    mass: 0.024,
    alternatives: [
      { name: "bell 18", mass: 0.016, price: 14, leadTime: 12 },
      { name: "bell 16", mass: 0.011, price: 22, leadTime: 2, uncertainty: 0.0004 },
    ],
  },
  {
    name: "wheels",
    quantity: 4,
    mass: 0.003,
    alternatives: [{ name: "foam", mass: 0.001, price: 1.5, leadTime: 5 }],
  },
];
const REQUEST = { lines: LINES, allowed: 0.0625, by: "price" };

describe("POST /swaps", () => {
  it("gives the sets best first, with all that they come to, in the documented shape", async () => {
    const { body } = await post(REQUEST).expect(200);
    expect(swapsResponse.parse(body)).toEqual(body);
    // By hand: foam wheels and bell 16 are the only way to 55 g; bell 18 and foam come to 60 g for 20; bell 16 alone to 63 g.
    expect(body.reachable).toBe(true);
    expect(body.solutions.map(({ choices }: { choices: unknown }) => choices)).toEqual([
      [null, 0, 0],
      [null, 1, 0],
    ]);
    expect(body.solutions[0]).toMatchObject({
      mass: 0.06,
      uncertainty: 0.003,
      price: 20,
      leadTime: 12,
      count: 2,
    });
    // Φ(2.5/3) = 0.797 671 6.
    expect(body.solutions[0].chance).toBeCloseToRelative(0.7976716, 1e-7);
    expect(body.lightest).toEqual(body.solutions[1]);
  });

  it.each([
    ["leadTime", [null, 1, 0], { leadTime: 5, price: 28 }],
    ["count", [null, 0, 0], { count: 2, price: 20 }],
  ])("by %s puts that first", async (by, choices, figures) => {
    const { body } = await post({ ...REQUEST, by, solutions: 1 }).expect(200);
    expect(body.solutions).toHaveLength(1);
    expect(body.solutions[0]).toMatchObject({ choices, ...figures });
  });

  it("of a limit that no set reaches, says so and names the lightest", async () => {
    const { body } = await post({ ...REQUEST, allowed: 0.05 }).expect(200);
    expect(body).toMatchObject({ reachable: false, solutions: [], lightest: { choices: [null, 1, 0] } });
  });

  it.each([
    ["lines.0.mass", { lines: [{ mass: -0.01, alternatives: [] }] }],
    ["lines.0.mass", { lines: [{ alternatives: [] }] }],
    ["lines.0.quantity", { lines: [{ mass: 0.01, quantity: 0, alternatives: [] }] }],
    [
      "lines.0.alternatives.0.price",
      { lines: [{ mass: 0.01, alternatives: [{ mass: 0.01, leadTime: 1 }] }] },
    ],
    [
      "lines.0.alternatives.0.alternatives",
      { lines: [{ mass: 1, alternatives: [{ mass: 1, price: 1, leadTime: 1, alternatives: [] }] }] },
    ],
    ["lines", { lines: [] }],
    ["lines.3.name", { lines: [...LINES, LINES[1]] }],
    ["allowed", { allowed: "light" }],
    ["by", { by: "colour" }],
    ["solutions", { solutions: 0 }],
    ["colour", { colour: "red" }],
  ])("refuses %s by its path, with %o", async (path, change) => {
    const { body } = await post({ ...REQUEST, ...change }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toContain(path);
  });

  it("says of more alternatives, more alike, than can be ranked that they are", async () => {
    const { uniform } = createRandom(5);
    // Each costs just what it saves, to the last digit: every set costs as much as it saves.
    const lines = Array.from({ length: 60 }, () => {
      const mass = 0.03 + 0.03 * uniform();
      const alternatives = Array.from({ length: 6 }, () => {
        const lighter = mass * uniform();
        return { mass: lighter, price: mass - lighter, leadTime: 1 };
      });
      return { mass, alternatives };
    });
    const { body } = await post({ lines, allowed: 1.5, by: "price" }).expect(422);
    expect(body.error.fields).toEqual([{ path: "lines", message: expect.stringMatching(/too alike/) }]);
  });
});
