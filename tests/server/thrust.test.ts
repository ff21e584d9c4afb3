import { describe, expect, it } from "vitest";
import { resolveBuild, solvable } from "#shared/book/resolve.ts";
import { COLLECTION_NAMES } from "#shared/model/collections.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { thrustTest } from "#tests/support/thrustBook.ts";
import { addParts, type Book, freshBook } from "./support/api.ts";
import { sampleBuild } from "./support/records.ts";

const ROWS = [
  { rpm: 8000, grams: 60, amps: 2.1 },
  { rpm: 11_000, grams: 114, amps: 3.8 },
  { rpm: 14_000, grams: 186, amps: 6.1 },
];

async function withPropeller(book: Book) {
  const parts = await addParts(book);
  const made = await book.api
    .post("/api/v1/rotors")
    .send({ name: "Glass pusher", kind: "propeller", sizes: [{ diameter: 0.127 }], chord: 0.015 })
    .expect(201);
  const { skirt: _none, ...others } = parts;
  return { ...others, rotor: made.body.id as string };
}

const testOf = (parts: { rotor: string; motor: string }, change: object = {}) =>
  thrustTest(ROWS, { rotor: parts.rotor, motor: parts.motor, ...change });

const buildOf = (parts: Omit<Parameters<typeof sampleBuild>[0], "skirt">) => {
  const { skirt: _none, ...build } = sampleBuild({ ...parts, skirt: "" });
  return { ...build, diameter: 0.127 };
};

async function bookOf({ api }: Book) {
  const lists = await Promise.all(COLLECTION_NAMES.map((name) => api.get(`/api/v1/${name}?limit=500`)));
  return Object.fromEntries(COLLECTION_NAMES.map((name, i) => [name, lists[i].body.items]));
}

describe("a thrust test over the API", () => {
  it("is stored, listed by its kind and its propeller, corrected with its past kept, removed", async () => {
    const book = freshBook();
    const parts = await withPropeller(book);
    const made = await book.api.post("/api/v1/tests").send(testOf(parts)).expect(201);
    const at = `/api/v1/tests/${made.body.id}`;
    expect(made.body.data.rows[0].throttle).toEqual({ value: 100, unit: "%" });
    const listed = await book.api.get(`/api/v1/tests?kind=thrust&rotor=${parts.rotor}`).expect(200);
    expect(listed.body.items).toHaveLength(1);
    await book.api
      .put(at)
      .set("If-Match", '"1"')
      .send(testOf(parts, { title: "again" }))
      .expect(200);
    const past = await book.api.get(`${at}/revisions`).expect(200);
    expect(past.body.items ?? past.body).toHaveLength(2);
    await book.api.delete(at).expect(204);
    await book.api.get(at).expect(404);
  });

  it.each([
    ["no rows", { rows: [] }, "rows"],
    [
      "a speed of 0",
      { rows: [{ speed: { value: 0, unit: "rpm" }, thrust: { value: 1, unit: "g" } }] },
      "rows.0.speed",
    ],
    [
      "a thrust in volts",
      { rows: [{ speed: { value: 9, unit: "rpm" }, thrust: { value: 1, unit: "V" } }] },
      "rows.0.thrust",
    ],
    ["a propeller that the book does not have", { rotor: "no-such" }, "rotor"],
  ])("with %s: is refused by name, and nothing is stored", async (_, change, path) => {
    const book = freshBook();
    const parts = await withPropeller(book);
    const { status, body } = await book.api.post("/api/v1/tests").send(testOf(parts, change));
    expect([400, 422]).toContain(status);
    expect(body.error.fields.map((field: { path: string }) => field.path).join(" ")).toContain(path);
    expect(book.store.counts().tests).toBe(0);
  });
});

describe("a build without a skirt over the API", () => {
  it("with a propeller and its thrust test: resolves and is predicted", async () => {
    const book = freshBook();
    const parts = await withPropeller(book);
    await book.api.post("/api/v1/tests").send(testOf(parts)).expect(201);
    const made = await book.api.post("/api/v1/builds").send(buildOf(parts)).expect(201);
    expect(made.body.data.skirt).toBeNull();
    const changedBook = (await bookOf(book)) as unknown as Parameters<typeof resolveBuild>[0];
    const input = solvable(resolveBuild(changedBook, made.body.data));
    const point = input && predictAny(input).point;
    expect(point && "thrust" in point && point.thrust).toBeGreaterThan(0);
  });

  it("goes with the archive into another book, and is found again", async () => {
    const book = freshBook();
    const parts = await withPropeller(book);
    await book.api.post("/api/v1/tests").send(testOf(parts)).expect(201);
    await book.api.post("/api/v1/builds").send(buildOf(parts)).expect(201);
    const { body: sent } = await book.api.get("/api/v1/archive").expect(200);
    const other = freshBook();
    await other.api.post("/api/v1/archive").send(sent).expect(201);
    const { body: again } = await other.api.get("/api/v1/archive");
    expect(again.records).toEqual(sent.records);
  });

  it("keeps its propeller from being deleted while it is used", async () => {
    const book = freshBook();
    const parts = await withPropeller(book);
    await book.api.post("/api/v1/builds").send(buildOf(parts)).expect(201);
    await book.api.delete(`/api/v1/rotors/${parts.rotor}`).expect(409);
  });
});
