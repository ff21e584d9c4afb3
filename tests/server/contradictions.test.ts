import { describe, expect, it } from "vitest";
import { type Book, freshBook } from "./support/api.ts";
import { sampleCurve, samples } from "./support/records.ts";

const mm = (value: number) => ({ value, unit: "mm" });

async function bookWithRotors() {
  const book = freshBook();
  const add = async (rotor: object) =>
    (await book.api.post("/api/v1/rotors").send(rotor).expect(201)).body.id;
  return {
    book,
    ducted: (await add(samples.rotors)) as string,
    propeller: (await add({ name: "Trio", kind: "propeller", sizes: [{ diameter: 0.076 }] })) as string,
  };
}

const sampleThrust = (rotor: string) => ({
  kind: "thrust",
  date: "2026-03-12",
  rotor,
  diameter: mm(76),
  rows: [{ speed: { value: 12000, unit: "rpm" }, thrust: { value: 40, unit: "g" } }],
});

async function refused(
  { api }: Book,
  path: string,
  body: object,
): Promise<{ path: string; message: string }[]> {
  const sent = path.includes("/")
    ? api.put(`/api/v1/${path}`).set("If-Match", '"1"')
    : api.post(`/api/v1/${path}`);
  const { body: answer } = await sent.send(body).expect(422);
  expect(answer.error.code).toBe("contradiction");
  return answer.error.fields;
}

describe("a test that can't be true of its rotor", () => {
  it("a thrust test of a ducted rotor, a curve test of a propeller: 422, the rotor named", async () => {
    const { book, ducted, propeller } = await bookWithRotors();
    const thrust = await refused(book, "tests", { ...sampleThrust(ducted), diameter: mm(42) });
    expect(thrust).toEqual([
      { path: "rotor", message: "Fern 24 is a ducted rotor; allowed: a propeller, for a thrust test." },
    ]);
    const curve = await refused(book, "tests", { ...sampleCurve(propeller), diameter: mm(76) });
    expect(curve.map(({ path }) => path)).toEqual(["rotor"]);
    expect(book.store.counts().tests).toBe(0);
    await book.api.post("/api/v1/tests").send(sampleThrust(propeller)).expect(201);
  });

  it("a diameter that the family lacks: 422 with its sizes, when added and when corrected", async () => {
    const { book, ducted } = await bookWithRotors();
    const [field] = await refused(book, "tests", sampleCurve(ducted, { diameter: mm(40) }));
    expect(field.path).toBe("diameter");
    expect(field.message.replace(/\s/g, " ")).toBe(
      "Read 40 mm; allowed: a size of Fern 24, 42.0 mm, 38.0 mm. Add a further size to the rotor first.",
    );
    const { body } = await book.api.post("/api/v1/tests").send(sampleCurve(ducted)).expect(201);
    await refused(book, `tests/${body.id}`, sampleCurve(ducted, { diameter: mm(40) }));
    const inches = { value: 38 / 25.4, unit: "in" };
    await book.api
      .post("/api/v1/tests")
      .send(sampleCurve(ducted, { diameter: inches }))
      .expect(201);
  });
});

describe("a rotor with tests", () => {
  it("that changes kind, or loses a tested size: 422, the test named, nothing changed", async () => {
    const { book, ducted } = await bookWithRotors();
    await book.api.post("/api/v1/tests").send(sampleCurve(ducted)).expect(201);
    const [kind] = await refused(book, `rotors/${ducted}`, { ...samples.rotors, kind: "propeller" });
    expect(kind.path).toBe("kind");
    expect(kind.message).toContain('curve test "Blocked and open" of 2026-03-12');
    const [sizes] = await refused(book, `rotors/${ducted}`, {
      ...samples.rotors,
      sizes: [{ diameter: 0.038 }],
    });
    expect(sizes.path).toBe("sizes");
    expect(sizes.message).toMatch(
      /^The curve test "Blocked and open" of 2026-03-12 was made with it as it is/,
    );
    expect(sizes.message).toContain("its diameter would be wrong: Read 42 mm");
    const { body } = await book.api.get(`/api/v1/rotors/${ducted}`);
    expect(body).toMatchObject({ revision: 1, data: { kind: "ducted" } });
  });

  it("that gains a size or loses an untested one: is corrected", async () => {
    const { book, ducted } = await bookWithRotors();
    await book.api.post("/api/v1/tests").send(sampleCurve(ducted)).expect(201);
    const sizes = [{ diameter: 0.042 }, { diameter: 0.05 }];
    await book.api
      .put(`/api/v1/rotors/${ducted}`)
      .set("If-Match", '"1"')
      .send({ ...samples.rotors, sizes })
      .expect(200);
  });
});

describe("a typing error in what is stated as uncertain or estimated", () => {
  it.each([
    ["motors", { uncertainty: { Kv: 100 } }, "uncertainty.Kv", "kv, resistance"],
    ["packs", { uncertainty: { "cell.resistence": 0.01 } }, "uncertainty.cell.resistence", "cell.resistance"],
    ["skirts", { estimated: ["gab"] }, "estimated.0", "gap"],
    ["surfaces", { uncertainty: { friction: 0.05 } }, "uncertainty.friction", "wheelFriction"],
    ["rotors", { estimated: ["material.strenght"] }, "estimated.0", "material.strength"],
  ] as const)(
    "in %s: 400, the key named with those that there are",
    async (collection, change, path, allowed) => {
      const { api } = freshBook();
      const { body } = await api
        .post(`/api/v1/${collection}`)
        .send({ ...samples[collection], ...change })
        .expect(400);
      expect(body.error.fields.map((field: { path: string }) => field.path)).toEqual([path]);
      expect(body.error.fields[0].message).toContain("There is no figure");
      expect(body.error.fields[0].message).toContain(allowed);
    },
  );

  it.each([
    ["motors", { uncertainty: { kv: 100, noLoadCurrent: 0.01 }, estimated: ["thermalResistance"] }],
    ["packs", { uncertainty: { "cell.resistance": 0.01 }, estimated: ["cell.curve", "cell.maxCurrent"] }],
    ["rotors", { uncertainty: { "sizes.0.diameter": 1e-4 }, estimated: ["material", "sizes.1.mass"] }],
  ] as const)("in %s, where there is none: is stored as it is", async (collection, change) => {
    const { api } = freshBook();
    const { body } = await api
      .post(`/api/v1/${collection}`)
      .send({ ...samples[collection], ...change })
      .expect(201);
    expect(body.data).toMatchObject(change);
  });
});
