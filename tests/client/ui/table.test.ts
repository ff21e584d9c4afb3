import { describe, expect, it } from "vitest";
import { toCsv } from "#client/ui/table.ts";
import { shownRows } from "#client/ui/tableText.ts";

const table = {
  columns: ["what", "pull (g)", "note"],
  rows: [
    ["made", { value: 1523.4567, uncertainty: 12 }, ""],
    ["needed", 986.123456789, null],
    ["wanted", 1.5, "=1+1"],
    ["made, sharp", { value: 1523.4567, uncertainty: 0.012 }, 'says "so"'],
    ["count", 3, "a, b"],
  ],
} as const;

describe("a chart's numbers as CSV", () => {
  it("have the digits that their uncertainty allows, six significant where it isn't known", () => {
    const lines = toCsv(table).split("\r\n");
    expect(lines[0]).toBe("what,pull (g),note");
    // two digits of the uncertainty of 12, JCGM 100:2008, 7.2.6
    expect(lines[1]).toBe("made,1523,");
    expect(lines[2]).toBe("needed,986.123,");
    expect(lines[4]).toBe('"made, sharp",1523.46,"says ""so"""');
    expect(lines[5]).toBe('count,3,"a, b"');
  });

  it("of a figure that its uncertainty swallows, or reaches the tens of: to the last place of two digits, as on the screen", () => {
    const figures = {
      columns: ["residual"],
      rows: [
        [{ value: 0.0443515, uncertainty: 2.1 }],
        [{ value: -0.0443515, uncertainty: 2.1 }],
        [{ value: 1625.5173, uncertainty: 180 }],
        [{ value: 0.2, uncertainty: 0 }],
      ],
    };
    expect(toCsv(figures).split("\r\n").slice(1, 5)).toEqual(["0", "0", "1630", "0.2"]);
    const shown = shownRows(figures).map(([text]) => text.replace(/[\u2007\u2008]/g, ""));
    expect(shown).toEqual(["0.0", "0.0", "1630", "0.2000"]);
  });

  it("keep a formula from running, and leave out what is no number", () => {
    expect(toCsv(table).split("\r\n")[3]).toBe("wanted,1.5,'=1+1");
    expect(toCsv({ columns: ["x"], rows: [[Number.NaN]] })).toBe("x\r\n\r\n");
  });
});

describe("a chart's numbers on the screen", () => {
  it("have the digits that their uncertainty allows, and their decimal points above one another", () => {
    const column = shownRows(table).map((row) => row[1]);
    expect(column.map((text) => text.replace(/[\u2007\u2008]/g, ""))).toEqual([
      "1523",
      "986.1",
      "1.500",
      "1523.457",
      "3",
    ]);
    // as wide behind the point as the longest: three digits, or what is as wide as they
    const behind = column.map((text) => text.slice(text.search(/[.\u2008]/) + 1).length);
    expect(new Set(behind)).toEqual(new Set([3]));
  });

  it("that rounding brings to a power of ten have no digit more than others", () => {
    expect(shownRows({ columns: ["x"], rows: [[-0.99999]] })).toEqual([["\u22121.000"]]);
  });

  it("are a dash where there is none", () => {
    expect(shownRows(table)[1][2]).toBe("–");
  });
});
