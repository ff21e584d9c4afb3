import { describe, expect, it } from "vitest";
import { loadDemo } from "#server/demo.ts";
import { bookFitsFound } from "#server/routes/bookFits.ts";
import { motorBasis } from "#shared/book/motorBasis.ts";
import { packBasis } from "#shared/book/packBasis.ts";
import { propellerBasis } from "#shared/book/propellerBasis.ts";
import { rotorBasis } from "#shared/book/rotorBasis.ts";
import { bookFits } from "#shared/model/api/bookFits.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { freshBook } from "./support/api.ts";

const FITS = "/api/v1/fits";

function demoServer() {
  const book = freshBook();
  loadDemo(book.store, new Date("2026-03-01T08:00:00Z"));
  return book;
}

/** How many of the demo's tests name each of its parts, counted apart. */
function countsOf(name: "rotor" | "surface", id: string): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { data } of demoBook().tests)
    if ((data as unknown as Record<string, unknown>)[name] === id)
      counts[data.kind] = (counts[data.kind] ?? 0) + 1;
  return counts;
}

describe("GET /fits", () => {
  it("of the demo: answers in the documented shape what each part's own tests come to", async () => {
    const { body } = await demoServer().api.get(FITS).expect(200);
    expect(bookFits.parse(body)).toEqual(body);
    const demo = demoBook();
    const rotor = rotorBasis(demo, "swept-nine");
    if (rotor.basis === "missing") throw new Error("The demo's rotor has no curve.");
    expect(body.rotors["swept-nine"].psi).toEqual(rotor.psi.map((value) => expect.closeTo(value, 9)));
    expect(body.motors["bell-18"].constants.kv).toBeCloseTo(
      motorBasis(demo, "bell-18")?.constants.kv ?? 0,
      6,
    );
    const [pack] = Object.keys(body.packs);
    expect(packBasis(demo, pack)).toMatchObject({ basis: "measured" });
    const [propeller] = Object.keys(body.propellers);
    expect(propellerBasis(demo, propeller).basis).toBe("measured");
    expect(JSON.stringify(body)).not.toContain("testId");
  });

  it("of the demo: counts the tests of every part by kind, and names parts without one", async () => {
    const { body } = await demoServer().api.get(FITS).expect(200);
    for (const { id } of demoBook().rotors) expect(body.tests.rotor[id]).toEqual(countsOf("rotor", id));
    for (const { id } of demoBook().surfaces) expect(body.tests.surface[id]).toEqual(countsOf("surface", id));
  });

  it("of an empty bench: no part at all", async () => {
    const { body } = await freshBook().api.get(FITS).expect(200);
    const none = { rotor: {}, motor: {}, pack: {}, skirt: {}, surface: {}, gear: {} };
    expect(body).toEqual({ tests: none, rotors: {}, propellers: {}, motors: {}, packs: {}, surfaces: {} });
  });

  it("after a test is struck out: neither counted nor in the fit", async () => {
    const { api } = demoServer();
    const before = (await api.get(FITS)).body;
    const curve = demoBook().tests.find(({ data }) => data.kind === "curve" && data.rotor === "swept-nine");
    const path = `/api/v1/tests/${curve?.id}`;
    const { revision, data } = (await api.get(path)).body;
    await api
      .put(path)
      .set("If-Match", `"${revision}"`)
      .send({ ...data, struckOut: "the tube had come off" })
      .expect(200);
    const after = (await api.get(FITS)).body;
    expect(after.tests.rotor["swept-nine"].curve).toBe(before.tests.rotor["swept-nine"].curve - 1);
    expect(after.rotors["swept-nine"].psi).not.toEqual(before.rotors["swept-nine"].psi);
  });

  it("asked with another method: 405", async () => {
    await demoServer().api.post(FITS).send({}).expect(405);
  });
});

describe("the fits of a book, asked again by whoever knows an answer", () => {
  it("from a book that is as it was: without a text", () => {
    const { store } = demoServer();
    const first = bookFitsFound({ file: store.file, known: null });
    expect(first.text?.length).toBeGreaterThan(0);
    expect(bookFitsFound({ file: store.file, known: first.from })).toEqual({ from: first.from, text: null });
  });
});
