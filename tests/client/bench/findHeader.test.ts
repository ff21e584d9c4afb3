import { describe, expect, it } from "vitest";
import { CsvError } from "#client/views/bench/import/csv.ts";
import { guessDelimiter } from "#client/views/bench/import/sniff.ts";
import { readCsv } from "#tests/support/importing.ts";

/** As pocket meters write it; invented. */
const PREAMBLE = [
  "Bench logger 3, export",
  "Serial no,20417",
  "Started,2026-03-14 10:02:11",
  "Interval,0.5",
  "",
];

const place = (text: string) => {
  const { header, headerLine, lines, delimiter, decimal } = readCsv(text);
  return { header, headerLine, first: lines.at(0).line, count: lines.length, delimiter, decimal };
};

describe("the header of a file, found by itself", () => {
  it("in the first line, without a preamble, as it was", () => {
    expect(place("rpm,flow [L/s],pressure [Pa]\n24000,0,1250\n24000,1,1100\n")).toMatchObject({
      headerLine: 1,
      first: 2,
      count: 2,
    });
  });

  it("under a preamble of titles and settings, of the table's own width or not", () => {
    const table = ["Time,Voltage [V],Current [A]", "0,4.1,0", "0.5,3.9,2.6", "1,3.88,2.6"];
    const narrow = place([...PREAMBLE, ...table].join("\r\n"));
    expect(narrow).toMatchObject({ headerLine: 6, first: 7, count: 3 });
    expect(narrow.header).toEqual(["Time", "Voltage [V]", "Current [A]"]);
    const padded = PREAMBLE.map((line) => `${line}${",".repeat(3 - line.split(",").length)}`);
    expect(place([...padded, ...table].join("\n"))).toMatchObject({ headerLine: 6, first: 7, count: 3 });
  });

  it("under settings as wide as the table, each a name and a number", () => {
    expect(place("Serial,20417\nRange,2\nheld,let go\n410,430\n420,440\n405,430\n")).toMatchObject({
      headerLine: 3,
      first: 4,
      header: ["held", "let go"],
    });
  });

  it("above a line of units, which join the names", () => {
    expect(place("Logger\nt;U;I\ns;V;A\n0,0;4,1;0\n0,5;3,9;2,6\n")).toMatchObject({
      headerLine: 2,
      first: 4,
      header: ["t [s]", "U [V]", "I [A]"],
      delimiter: ";",
      decimal: ",",
    });
    expect(place("name,[rpm],[Pa]\n800,1,2\n").headerLine).toBe(1);
  });

  it("where names are letters that are units as well, the names and no line of units", () => {
    expect(place("Logger 3\nV,A,rpm\n3.7,0.3,27600\n")).toMatchObject({
      headerLine: 2,
      header: ["V", "A", "rpm"],
    });
  });

  it("nowhere, with readings from the first line on: columns by number, no reading lost", () => {
    expect(place("800,0.1,2.5\n900,0.2,2.0\n")).toMatchObject({
      headerLine: null,
      first: 1,
      count: 2,
      header: ["column 1", "column 2", "column 3"],
    });
  });

  it("above lines that are ragged, all of them, or spoilt at the top", () => {
    expect(place("a,b,c\n1,2\n1,2,3,4\n")).toMatchObject({ headerLine: 1, count: 2 });
    expect(place("a,b\noops,broken\n1,2\n3,4\n").count).toBeGreaterThanOrEqual(2);
  });

  it("with clock times and dates for readings, and cells in which a meter read nothing", () => {
    expect(place("Date,U,I\n2026-03-14 10:02:11,4.1,NaN\n2026-03-14 10:02:12,---,2.6\n")).toMatchObject({
      headerLine: 1,
      count: 2,
    });
  });
});

describe("the header of a file, said", () => {
  const text = "Bench logger\nx,y\nheld,let go\n410,430\n420,440\n";

  it("is the line said, and what is under it is read", () => {
    expect(readCsv(text, { header: 2 })).toMatchObject({ headerLine: 2, header: ["x", "y"] });
    expect(readCsv(text, { header: 2 }).lines).toHaveLength(3);
  });

  it("is none, with 0 said: every line is read", () => {
    const table = readCsv(text, { header: 0 });
    expect(table).toMatchObject({ headerLine: null });
    expect(table.lines.at(0).line).toBe(1);
  });

  it("is refused with nothing under it, in words", () => {
    expect(() => readCsv("held,let go\n410,430\n", { header: 2 })).toThrow(CsvError);
  });
});

describe("guessDelimiter", () => {
  it.each([
    ["decimal commas between semicolons", ["p;Q", "1,5;2,25", "2,5;3,75"], ";"],
    ["decimal commas between tabs", ["p\tQ", "1,5\t2,25"], "\t"],
    ["commas with a semicolon in a note", ["p,Q,note", "1,2,a; b", "3,4,c"], ","],
    ["quoted commas between semicolons", ['name;"a, b"', '1;"2,5"', '2;"3,5"'], ";"],
    ["bars", ["p|Q", "1|2"], "|"],
    ["one column", ["held", "410"], ","],
    ["a preamble with commas above semicolons", ["Made by A, B, C, D", "p;Q", "1;2", "3;4"], ";"],
  ])("of %s", (_what, lines, delimiter) => {
    expect(guessDelimiter(lines)).toBe(delimiter);
  });
});
