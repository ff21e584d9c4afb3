import { describe, expect, it } from "vitest";
import { type Book, freshBook } from "./support/api.ts";
import { sampleCurve, samples } from "./support/records.ts";

const pascals = (value: number) => ({ value, unit: "Pa" });

const SENSOR = { name: "Sensor A", measures: "pressure", percent: 0.7, absolute: pascals(1.5) };
const TACHOMETER = { name: "Tacho", measures: "speed", percent: 0.3 };
const PLATE = {
  name: "Drilled plate",
  thickness: 0.003,
  holes: [
    { diameter: 0.004, count: 12 },
    { diameter: 0.01, count: 36, edge: "rounded" },
  ],
};

async function bookWithParts() {
  const book = freshBook();
  const add = async (path: string, body: object): Promise<string> =>
    (await book.api.post(`/api/v1/${path}`).send(body).expect(201)).body.id;
  return {
    book,
    rotor: await add("rotors", samples.rotors),
    sensor: await add("instruments", SENSOR),
    tachometer: await add("instruments", TACHOMETER),
    plate: await add("plates", PLATE),
  };
}

/** A curve test by a plate of the book and instruments of it. */
const byName = ({ rotor, sensor, plate }: Awaited<ReturnType<typeof bookWithParts>>, change = {}) =>
  sampleCurve(rotor, {
    flowFrom: "bleed-plate",
    plate,
    instruments: { pressure: sensor, speed: { percent: 0.5 } },
    rows: [{ speed: { value: 24000, unit: "rpm" }, pressure: pascals(800), open: [12, 3] }],
    ...change,
  });

async function refused({ api }: Book, body: object, status = 422): Promise<Record<string, string>> {
  const answer = await api.post("/api/v1/tests").send(body).expect(status);
  const fields = answer.body.error.fields as { path: string; message: string }[];
  return Object.fromEntries(fields.map(({ path, message }) => [path, message]));
}

describe("a test that names its plate and its instruments", () => {
  it("is stored as it is, found by them, and guards them against deletion", async () => {
    const parts = await bookWithParts();
    const { book, sensor, plate } = parts;
    const { body } = await book.api.post("/api/v1/tests").send(byName(parts)).expect(201);
    expect(body.data).toMatchObject({ plate, instruments: { pressure: sensor, speed: { percent: 0.5 } } });
    for (const [collection, id, word] of [
      ["instruments", sensor, "instrument"],
      ["plates", plate, "plate"],
    ] as const) {
      const listed = await book.api.get(`/api/v1/tests?${word}=${id}`).expect(200);
      expect(listed.body.items).toHaveLength(1);
      const kept = await book.api.delete(`/api/v1/${collection}/${id}`).expect(409);
      expect(kept.body.error.message).toContain('the test "Blocked and open"');
    }
    const { body: sent } = await book.api.get("/api/v1/archive").expect(200);
    const other = freshBook();
    await other.api.post("/api/v1/archive").send(sent).expect(201);
    expect(other.store.counts()).toMatchObject({ instruments: 2, plates: 1, tests: 1 });
  });

  it("describing both itself, as before: is stored as it is", async () => {
    const { book, rotor } = await bookWithParts();
    const hole = { diameter: { value: 4, unit: "mm" }, thickness: { value: 3, unit: "mm" }, count: 12 };
    const own = sampleCurve(rotor, {
      flowFrom: "bleed-plate",
      plate: { holes: [hole] },
      instruments: { pressure: { percent: 1, absolute: pascals(2) } },
      rows: [{ speed: { value: 24000, unit: "rpm" }, pressure: pascals(800), open: [12] }],
    });
    const { body } = await book.api.post("/api/v1/tests").send(own).expect(201);
    expect(body.data.plate.holes[0]).toMatchObject({ ...hole, edge: "sharp" });
  });

  it("that aren't in the book: 422 by their place; in a description that can't be: 400 by the field in it", async () => {
    const parts = await bookWithParts();
    const { book } = parts;
    const gone = await refused(book, byName(parts, { plate: "gone", instruments: { pressure: "lost" } }));
    expect(Object.keys(gone)).toEqual(["plate", "instruments.pressure"]);
    const tooMuch = byName(parts, { instruments: { pressure: { percent: 120 } } });
    expect(Object.keys(await refused(book, tooMuch, 400))).toEqual(["instruments.pressure.percent"]);
    const wrongUnit = byName(parts, { instruments: { speed: { absolute: pascals(2) } } });
    expect(Object.keys(await refused(book, wrongUnit, 400))).toEqual(["instruments.speed.absolute.unit"]);
    const typo = byName(parts, { plate: { hols: [] } });
    expect(Object.keys(await refused(book, typo, 400))).toEqual(["plate.holes", "plate.hols"]);
  });

  it("an instrument that measures something else: 422 that names it", async () => {
    const parts = await bookWithParts();
    const wrong = byName(parts, { instruments: { pressure: parts.tachometer } });
    expect(await refused(parts.book, wrong)).toEqual({
      "instruments.pressure": "Tacho measures speed; allowed: an instrument that measures pressure.",
    });
  });

  it("more holes open than the plate has, or another number of kinds: 422 by the row", async () => {
    const parts = await bookWithParts();
    const open = (counts: number[]) =>
      byName(parts, {
        rows: [{ speed: { value: 24000, unit: "rpm" }, pressure: pascals(800), open: counts }],
      });
    expect(await refused(parts.book, open([13, 0]))).toEqual({
      "rows.0.open.0": "Drilled plate: the plate has only 12 such holes.",
    });
    expect(Object.keys(await refused(parts.book, open([2])))).toEqual(["rows.0.open"]);
  });
});

describe("a plate or an instrument that tests name", () => {
  it("that would contradict them: 422 with the test; else it is corrected", async () => {
    const parts = await bookWithParts();
    const { api } = parts.book;
    await api.post("/api/v1/tests").send(byName(parts)).expect(201);
    const put = (path: string, body: object) => api.put(`/api/v1/${path}`).set("If-Match", '"1"').send(body);
    const fewer = await put(`plates/${parts.plate}`, { ...PLATE, holes: [{ diameter: 0.004, count: 12 }] });
    expect([fewer.status, fewer.body.error.fields[0].path]).toEqual([422, "holes"]);
    expect(fewer.body.error.message).toContain('The curve test "Blocked and open"');
    const other = await put(`instruments/${parts.sensor}`, { name: "Sensor A", measures: "flow" });
    expect([other.status, other.body.error.fields[0].path]).toEqual([422, "measures"]);
    await put(`plates/${parts.plate}`, { ...PLATE, dischargeCoefficient: 0.63 }).expect(200);
    await put(`instruments/${parts.sensor}`, { ...SENSOR, percent: 0.5 }).expect(200);
  });

  it.each([
    [
      "a fixed part in another quantity's unit",
      { ...SENSOR, absolute: { value: 2, unit: "rpm" } },
      "absolute.unit",
    ],
    ["what no instrument here measures", { ...SENSOR, measures: "colour" }, "measures"],
    ["more than 100 per cent", { ...SENSOR, percent: 101 }, "percent"],
    ["a resolution below 0", { ...SENSOR, resolution: pascals(-1) }, "resolution.value"],
  ])("with %s: 400 by its field", async (_, body, path) => {
    const { api } = freshBook();
    const { body: answer } = await api.post("/api/v1/instruments").send(body).expect(400);
    expect(answer.error.fields[0].path).toBe(path);
  });
});
