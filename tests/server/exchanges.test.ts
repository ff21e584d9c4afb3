import { describe, expect, it } from "vitest";
import { addBook, freshBook } from "./support/api.ts";

/** A stored build, and the answer to storing parts to try in it. */
async function putExchanges(of: (build: Record<string, string>) => object) {
  const book = freshBook();
  const { build } = await addBook(book);
  const answer = await book.api
    .put(`/api/v1/builds/${build.id}`)
    .set("If-Match", '"1"')
    .send({ ...build.data, exchanges: of(build.data) });
  const { body: after } = await book.api.get(`/api/v1/builds/${build.id}`);
  return { book, build, answer, after };
}

describe("parts that swaps may try, over the API", () => {
  it("are stored, and keep their parts from being deleted", async () => {
    const { book, build, answer, after } = await putExchanges(({ motor, rotor }) => ({
      motors: [motor],
      rotors: [{ rotor, diameter: 0.05 }],
    }));
    expect(answer.status).toBe(200);
    expect(after.data.exchanges).toEqual({
      motors: [build.data.motor],
      rotors: [{ rotor: build.data.rotor, diameter: 0.05 }],
      packs: [],
      skirts: [],
    });
    await book.api.delete(`/api/v1/motors/${build.data.motor}`).set("If-Match", '"1"').expect(409);
  });

  it("may be no skirt at all, for an open propeller", async () => {
    const { answer, after } = await putExchanges(({ skirt }) => ({ skirts: [skirt, null] }));
    expect(answer.status).toBe(200);
    expect(after.data.exchanges.skirts.at(-1)).toBeNull();
  });

  it.each([
    ["exchanges.skirts.1", () => ({ skirts: [null, null] })],
    ["exchanges.motors.1", ({ motor }: Record<string, string>) => ({ motors: [motor, motor] })],
    [
      "exchanges.rotors.1",
      ({ rotor }: Record<string, string>) => ({
        rotors: [
          { rotor, diameter: 0.05 },
          { rotor, diameter: 0.05 },
        ],
      }),
    ],
    ["exchanges.rotors.0.diameter", ({ rotor }: Record<string, string>) => ({ rotors: [{ rotor }] })],
    ["exchanges.motors.0", () => ({ motors: ["no-such-motor"] })],
  ])("name %s where it can't be, and nothing is changed", async (path, of) => {
    const { answer, after } = await putExchanges(of);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
    expect(after.revision).toBe(1);
  });
});
