import { describe, expect, it } from "vitest";
import { addBook, freshBook } from "./support/api.ts";

const SPACE = { name: "Cover", nominal: 0.03 };
const MOTOR = { name: "Motor", of: "motor.length" };
const stack = (more: object = {}) => ({ name: "Height", space: SPACE, parts: [MOTOR], ...more });

/** A stored build, and the answer to storing stacks in it. */
async function putStacks(stacks: object[]) {
  const book = freshBook();
  const { build } = await addBook(book);
  const answer = await book.api
    .put(`/api/v1/builds/${build.id}`)
    .set("If-Match", '"1"')
    .send({ ...build.data, stacks });
  const { body: after } = await book.api.get(`/api/v1/builds/${build.id}`);
  return { answer, after };
}

describe("a build's stacks, over the API", () => {
  it("are stored with their defaults", async () => {
    const { answer, after } = await putStacks([stack()]);
    expect(answer.status).toBe(200);
    expect(after.data.stacks).toEqual([
      {
        name: "Height",
        kind: "other",
        space: { ...SPACE, basis: "drawn" },
        parts: [{ ...MOTOR, basis: "drawn", quantity: 1 }],
      },
    ]);
  });

  it.each([
    ["stacks.0.space", [{ name: "Height", parts: [MOTOR] }]],
    ["stacks.0.parts", [stack({ parts: [] })]],
    ["stacks.0.space.nominal", [stack({ space: { name: "Cover" } })]],
    ["stacks.0.space.nominal", [stack({ space: { ...SPACE, nominal: -0.03 } })]],
    ["stacks.0.space.nominal", [stack({ space: { ...SPACE, of: "pack.height" } })]],
    ["stacks.0.space.tolerance", [stack({ space: { ...SPACE, tolerance: 0.04 } })]],
    ["stacks.0.parts.0.quantity", [stack({ parts: [{ ...MOTOR, quantity: 0 }] })]],
    ["stacks.0.parts.1.of", [stack({ parts: [MOTOR, { ...MOTOR, name: "Motor again" }] })]],
    ["stacks.0.parts.1.name", [stack({ parts: [MOTOR, { name: "Motor", nominal: 0.01 }] })]],
    ["stacks.0.parts.0.of", [stack({ parts: [{ name: "Motor", of: "motor.width" }] })]],
    ["stacks.1.name", [stack(), stack()]],
  ])("names %s of %j, and nothing is changed", async (path, stacks) => {
    const { answer, after } = await putStacks(stacks);
    expect(answer.status).toBe(400);
    expect(answer.body.error.fields.map((field: { path: string }) => field.path)).toContain(path);
    expect(answer.body.error.fields[0].message).toMatch(/allowed: /);
    expect(after.revision).toBe(1);
  });
});
