import { describe, expect, it } from "vitest";
import { CsvError, readCell } from "#client/views/bench/import/csv.ts";
import { readCsv } from "#tests/support/importing.ts";

const refusal = (text: string): string => {
  try {
    readCsv(text);
  } catch (error) {
    if (error instanceof CsvError) return error.message;
    throw error;
  }
  throw new Error("nothing was refused");
};

describe("readCsv, tables as files have them", () => {
  it("reads commas with decimal points", () => {
    const table = readCsv("n,Q,p\n800,0.1,2.5\n900,0.2,2.0\n");
    expect(table).toMatchObject({ delimiter: ",", decimal: ".", header: ["n", "Q", "p"] });
    expect([...table.lines]).toEqual([
      { line: 2, cells: ["800", "0.1", "2.5"] },
      { line: 3, cells: ["900", "0.2", "2.0"] },
    ]);
  });

  it("reads semicolons with decimal commas", () => {
    expect(readCsv("n;Q;p\n800;0,1;2,5\n")).toMatchObject({ delimiter: ";", decimal: "," });
  });

  it("reads tabs, a byte-order mark, carriage returns and blank lines, and counts lines as an editor does", () => {
    const table = readCsv("\uFEFFn\tp\r\n800\t2.5\r\n\r\n900\t2.0\r\n");
    expect(table.header).toEqual(["n", "p"]);
    expect([...table.lines].map(({ line }) => line)).toEqual([2, 4]);
  });

  it("keeps ragged lines as they are", () => {
    expect([...readCsv("a,b,c\n1,2\n1,2,3,4\n").lines].map(({ cells }) => cells.length)).toEqual([2, 4]);
  });

  it("counts on after a quoted cell that runs over two lines", () => {
    expect([...readCsv('a,b\n"x\ny",1\n2,3\n').lines].map(({ line }) => line)).toEqual([2, 4]);
  });

  it("reads head lines above the header, those that a spreadsheet filled up with empty cells as well", () => {
    const table = readCsv('# diameter = 42 mm,,\n# note = "two\\nlines"\nn,Q,p\n1,2,3\n');
    expect(table.head).toEqual({ diameter: "42 mm", note: "two\nlines" });
    expect(table.lines.at(0).line).toBe(4);
  });

  it("takes the delimiter and the decimal sign that it is told", () => {
    expect(readCsv("a;b,c\n1;2,5\n", { delimiter: ",", decimal: "." }).header).toEqual(["a;b", "c"]);
  });
});

describe("readCsv, text that is no table", () => {
  it.each(["", "\uFEFF", "\r\n \r\n"])("%j is refused as empty", (text) => {
    expect(refusal(text)).toMatch(/nothing in it/);
  });

  it("a header alone is refused and named", () => {
    expect(refusal("n,Q,p\r\n")).toMatch(/only a header \(n, Q, p\)/);
  });
});

describe("readCell, numbers under a decimal sign", () => {
  it.each([
    ["1.806", ".", 1.806],
    [" -3e-2 ", ".", -0.03],
    ["1,806", ",", 1.806],
    ["1.234,5", ",", 1234.5],
    ["21 818", ".", 21818],
    ["1,806", ".", null],
    ["1.806", ",", null],
    ["abc", ".", null],
    ["1e999", ".", null],
    ["12 Pa", ".", null],
    ["", ".", null],
  ] as const)("%j with %j reads as %s", (cell, decimal, expected) => {
    expect(readCell(cell, decimal)).toBe(expected);
  });
});
