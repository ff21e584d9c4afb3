import { describe, expect, it } from "vitest";
import { readUnit } from "#shared/book/readUnit.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
type Test = (typeof book.tests)[number];
const leak = (date: string, unit: string): Test => {
  const first = book.tests.find(({ data }) => data.kind === "leak");
  if (first?.data.kind !== "leak") throw new Error("The demo has a leak test.");
  const rows = first.data.rows.map((row) => ({ ...row, pressure: { value: 100, unit } }));
  return { ...first, data: { ...first.data, date, rows } as Test["data"] };
};

describe("readUnit", () => {
  it("of tests in two units: that of the newest day, whatever their order", () => {
    const tests = [leak("2024-03-02", "mmH2O"), leak("2024-03-01", "kPa")];
    expect(readUnit({ tests }, "pressure")).toBe("mmH2O");
    expect(readUnit({ tests: [...tests].reverse() }, "pressure")).toBe("mmH2O");
  });

  it("of no reading, or one in a unit that no menu offers: the first of the menu", () => {
    expect(readUnit({ tests: [] }, "pressure")).toBe("Pa");
    expect(readUnit({ tests: [leak("2024-03-02", "Torr")] }, "pressure")).toBe("Pa");
    expect(readUnit({ tests: [leak("2024-03-02", "kPa")] }, "load")).toBe("g");
  });
});
