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

  it("are a dash where there is none", () => {
    expect(shownRows(table)[1][2]).toBe("–");
  });
});
