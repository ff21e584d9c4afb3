import { describe, expect, it } from "vitest";
import { addBook, freshBook } from "./support/api.ts";

type Api = ReturnType<typeof freshBook>["api"];

const LINE = { name: "Wheel", group: "drive", quantity: 4, mass: 0.03 };

const swapFor = (own: string, others: readonly string[]) => ({
  ...LINE,
  name: own,
  alternatives: others.map((name) => ({ name, mass: 0.01 })),
});

/** A stored build, and what it would be without a number for the whole. */
async function buildIn(book: ReturnType<typeof freshBook>) {
  const { build } = await addBook(book);
  const { mass: _whole, ...vehicle } = build.data.vehicle;
  return { id: build.id as string, data: { ...build.data, vehicle } as Record<string, unknown> };
}

const put = (api: Api, id: string, data: object) =>
  api.put(`/api/v1/builds/${id}`).set("If-Match", '"1"').send(data);

describe("a build's ledger, over the API", () => {
  it("is stored with its defaults, and takes the place of a number for the whole", async () => {
    const book = freshBook();
    const { id, data } = await buildIn(book);
    const { body } = await put(book.api, id, { ...data, ledger: [LINE] }).expect(200);
    expect(body.data.ledger).toEqual([{ ...LINE, basis: "estimated", alternatives: [] }]);
    expect(body.data.vehicle).not.toHaveProperty("mass");
  });

  it("goes out with the archive and comes in again; a build of before it has none", async () => {
    const book = freshBook();
    const { id, data } = await buildIn(book);
    await put(book.api, id, { ...data, ledger: [LINE] }).expect(200);
    const { body: archive } = await book.api.get("/api/v1/archive").expect(200);
    const other = freshBook();
    await other.api.post("/api/v1/archive").send(archive).expect(201);
    const { body } = await other.api.get(`/api/v1/builds/${id}`).expect(200);
    expect(body.data.ledger).toHaveLength(1);
    expect(body.revision).toBe(2);
    const { body: revisions } = await other.api.get(`/api/v1/builds/${id}/revisions`).expect(200);
    expect(revisions.items[0].data).toMatchObject({ ledger: [], vehicle: { mass: expect.any(Number) } });
  });

  it("names every step of alternatives in a circle, and nothing is changed; a line that one way leads to is none", async () => {
    const book = freshBook();
    const { id, data } = await buildIn(book);
    const ledger = [
      swapFor("A", ["B"]),
      swapFor("B", ["Foam", "C"]),
      swapFor("C", ["A"]),
      swapFor("D", ["A"]),
    ];
    const { body } = await put(book.api, id, { ...data, ledger }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([
      "ledger.0.alternatives.0.name",
      "ledger.1.alternatives.1.name",
      "ledger.2.alternatives.0.name",
    ]);
    expect(body.error.fields[0].message).toBe(
      'Read "B", a line that may itself be exchanged for "A"; allowed: no circle of alternatives.',
    );
    const { body: after } = await book.api.get(`/api/v1/builds/${id}`);
    expect(after.revision).toBe(1);
    await put(book.api, id, { ...data, ledger: ledger.slice(1) }).expect(200);
  });

  it.each([
    ["vehicle.mass", []],
    ["ledger.0.mass", [{ ...LINE, mass: -0.01 }]],
    ["ledger.0.mass", [{ name: "Wheel", group: "drive" }]],
    ["ledger.0.quantity", [{ ...LINE, quantity: 0 }]],
    ["ledger.0.group", [{ ...LINE, group: "wheels" }]],
    ["ledger.1.name", [LINE, LINE]],
    ["ledger.0.alternatives.0.name", [{ ...LINE, alternatives: [{ name: "Wheel", mass: 0.01 }] }]],
    ["ledger.0.made.volume", [{ ...LINE, made: { by: "volume", material: "pla" } }]],
    ["ledger.0.made.material", [{ ...LINE, made: { by: "volume", material: "straw", volume: 1e-5 } }]],
    ["ledger.0.place.height", [{ ...LINE, place: { fromRear: 0.05, height: -0.01 } }]],
    ["ledger.0.alternatives.0.mass", [{ ...LINE, alternatives: [{ name: "Foam wheel" }] }]],
    [
      "ledger.0.alternatives.0.price",
      [{ ...LINE, alternatives: [{ name: "Foam wheel", mass: 0.01, price: -1 }] }],
    ],
    [
      "ledger.2.alternatives.0.name",
      [swapFor("Wheel", []), swapFor("Tyre", ["Wheel"]), swapFor("Axle", ["Axle"])],
    ],
  ])("names %s of %j, and nothing is changed", async (path, ledger) => {
    const book = freshBook();
    const { id, data } = await buildIn(book);
    const { body } = await put(book.api, id, { ...data, ledger }).expect(400);
    expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
    expect(body.error.fields[0].message).toMatch(/allowed: /);
    const { body: after } = await book.api.get(`/api/v1/builds/${id}`);
    expect(after.revision).toBe(1);
  });
});
