import { afterEach, describe, expect, it } from "vitest";
import { draftOf, readForm } from "#client/views/parts/draft.ts";
import { FORMS } from "#client/views/parts/forms.ts";
import { partsTable } from "#client/views/parts/partsCsv.ts";
import type { Stored } from "#shared/model/record.ts";
import { setDecimalMark } from "#shared/units/decimalMark.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
type Records = readonly Stored<Record<string, unknown>>[];
const recordsOf = (collection: (typeof FORMS)[number]["collection"]) =>
  book[collection] as unknown as Records;

afterEach(() => setDecimalMark("."));

describe("parts and builds, for a reader who writes a decimal comma", () => {
  it("stand in their forms without a point between digits, and are read back the same", () => {
    const asRead = FORMS.flatMap((form) =>
      recordsOf(form.collection).map(({ data }) => readForm(form, draftOf(form, data), data)),
    );
    setDecimalMark(",");
    const withComma = FORMS.flatMap((form) =>
      recordsOf(form.collection).map(({ data }) => readForm(form, draftOf(form, data), data)),
    );
    expect(withComma).toEqual(asRead);
    const [motors] = FORMS.filter(({ collection }) => collection === "motors");
    const { values } = draftOf(motors, { ...book.motors[0].data, resistance: 0.35 });
    expect(values.resistance).toMatch(/^350\s?mΩ|^0,35\s?Ω/);
    const { values: shown } = draftOf(motors, { ...book.motors[0].data, kv: 7800.5 });
    expect(shown.kv).toContain("7800,5");
  });

  it("go into files as they do for any other", () => {
    const tables = () => FORMS.map((form) => partsTable(form, recordsOf(form.collection), book));
    const files = tables();
    setDecimalMark(",");
    expect(tables()).toEqual(files);
  });
});
