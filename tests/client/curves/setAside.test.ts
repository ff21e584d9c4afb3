import { describe, expect, it } from "vitest";
import { asideRows, withRowSetAside } from "#client/views/curves/setAside.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const [{ data: test }] = demoBook().tests.filter(({ data }) => data.kind === "curve");

describe("withRowSetAside", () => {
  it("marks one row with the reason, trimmed, and leaves everything else as it was", () => {
    const next = withRowSetAside(test, 2, "  hose came off ");
    expect(next.rows[2]).toEqual({ ...test.rows[2], setAside: "hose came off" });
    expect({ ...next, rows: [] }).toEqual({ ...test, rows: [] });
    expect(next.rows.filter((_, i) => i !== 2)).toEqual(test.rows.filter((_, i) => i !== 2));
    expect(test.rows[2].setAside).toBeUndefined();
  });

  it("gives back the very test, with a row set aside and taken back", () => {
    const back = withRowSetAside(withRowSetAside(test, 0, "wet hose"), 0, null);
    expect(back).toEqual(test);
    expect("setAside" in back.rows[0]).toBe(false);
  });

  it.each([-1, test.rows.length])("refuses row %s, which the test does not have", (row) => {
    expect(() => withRowSetAside(test, row, "why")).toThrow(RangeError);
  });

  it("refuses a reason of blanks", () => {
    expect(() => withRowSetAside(test, 0, "   ")).toThrow(RangeError);
  });
});

describe("asideRows", () => {
  it("lists the rows with their reasons, in a test with two of them", () => {
    const next = withRowSetAside(withRowSetAside(test, 3, "b"), 1, "a");
    expect(asideRows(next)).toEqual([
      { row: 1, reason: "a" },
      { row: 3, reason: "b" },
    ]);
    expect(asideRows(test)).toEqual([]);
  });
});
