import { describe, expect, it } from "vitest";
import { partsFor } from "#client/views/bench/forms/defaults.ts";
import { headOf } from "#client/views/bench/import/tests.ts";
import { exportCsv } from "#client/views/bench/list/exportCsv.ts";
import { differences } from "#client/views/bench/record/differences.ts";
import { withField, withPlate } from "#client/views/bench/record/draft.ts";
import { instrumentFields, KINDS } from "#client/views/bench/record/kinds.ts";
import { platesOfBook } from "#client/views/bench/record/knownPlates.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { runningResult } from "#client/views/bench/running/run.ts";
import { type BenchTest, benchTest } from "#shared/model/tests/index.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { readCsv } from "#tests/support/importing.ts";

const book = demoBook();
const own = book.tests.find(({ data }) => data.kind === "curve")?.data;
if (own?.kind !== "curve") throw new Error("The demo has no curve test.");
const NAMING: BenchTest = {
  ...own,
  plate: "drilled-plate",
  instruments: { pressure: "pressure-sensor", speed: { percent: 0.3 } },
};

describe("a test that names its plate and an instrument, in the form", () => {
  it("comes back as it was stored, with the plate's holes to count", () => {
    const draft = writeDraft(NAMING, book);
    expect(draft.fields).toMatchObject({ plate: "drilled-plate", "instruments.pressure": "pressure-sensor" });
    expect(draft.holes.map(({ count, diameter }) => `${count} × ${diameter}`)).toEqual([
      "12 × 4 mm",
      "36 × 10 mm",
    ]);
    const { data, errors } = readDraft(draft);
    expect([...errors]).toEqual([]);
    expect(benchTest.parse(data)).toEqual(NAMING);
  });

  it("says of what is typed so far what it says of a test that describes them", () => {
    const [named, described] = [NAMING, own].map((test) =>
      runningResult(readDraft(writeDraft(test, book)), book).figures.map(({ label }) => label),
    );
    expect(named).toEqual(described);
    expect(named.length).toBeGreaterThan(0);
  });

  it("takes the plate described again, or another of the book", () => {
    const [plate] = platesOfBook(book);
    expect(plate.label).toBe("Drilled acrylic plate: 12 × 4 mm, 36 × 10 mm; 3 mm thick");
    const described = writeDraft(own, book);
    const named = withPlate(described, plate.holes, plate.key);
    expect(readDraft(named).data.plate).toBe("drilled-plate");
    const again = withField(named, "plate", "");
    expect(readDraft(again).data.plate).toMatchObject({ holes: [{ count: 12 }, { count: 36 }] });
  });

  it("with both a name and figures of its own: the name stands, the figures are not sent", () => {
    const draft = withField(writeDraft(NAMING, book), "instruments.pressure.percent", "rubbish");
    const { data, errors } = readDraft(draft);
    expect([...errors]).toEqual([]);
    expect(data.instruments).toMatchObject({ pressure: "pressure-sensor" });
  });

  it("offers for each reading the instruments that measure it", () => {
    const fields = instrumentFields(KINDS.curve).filter((field) => field.type === "part");
    const offered = fields.map((field) => [field.key, partsFor(book, field).map(({ id }) => id)]);
    expect(Object.fromEntries(offered)).toEqual({
      "instruments.pressure": ["pressure-sensor"],
      "instruments.flow": [],
      "instruments.speed": ["optical-tachometer"],
      "instruments.current": ["multimeter-amps"],
    });
  });

  it("differs from one that describes the plate by the plate alone, not hole by hole", () => {
    const paths = differences(
      writeDraft(own, book),
      writeDraft({ ...own, plate: "drilled-plate" }, book),
    ).map(({ path }) => path);
    expect(paths).toContain("plate");
    expect(paths.filter((path) => !path.startsWith("plate"))).toEqual([]);
  });
});

describe("the same test as CSV", () => {
  const csv = exportCsv(NAMING, { setUp: true, parts: book });

  it("names plate and instrument, and describes them as well", () => {
    expect(csv).toContain("# plate = drilled-plate");
    expect(csv).toContain("# plate.holes.1.diameter = 10 mm");
    expect(csv).toContain("# instruments.pressure = pressure-sensor");
    expect(csv).toContain("# instruments.pressure.percent = 0.7");
  });

  it("comes back by the names where the book knows them, by the descriptions where it doesn't", () => {
    const { head } = readCsv(csv);
    expect(headOf(head, "curve", book).fields).toMatchObject({
      plate: "drilled-plate",
      "instruments.pressure": "pressure-sensor",
    });
    const elsewhere = headOf(head, "curve", { instruments: [], plates: [] });
    expect(Object.keys(elsewhere.fields)).not.toContain("plate");
    expect(Object.keys(elsewhere.fields)).not.toContain("instruments.pressure");
    expect(elsewhere.fields["instruments.pressure.percent"]).toBe("0.7");
    expect(elsewhere.holes).toHaveLength(2);
  });
});
