import { describe, expect, it } from "vitest";
import { guessMapping } from "#client/views/bench/import/mapping.ts";
import { draftsOf, headOf } from "#client/views/bench/import/tests.ts";
import { csvName, exportCsv } from "#client/views/bench/list/exportCsv.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { type BenchTest, benchTest } from "#shared/model/tests/index.ts";
import { readCsv, readPoints } from "#tests/support/importing.ts";
import { KNOWN_CURVE, PLATE_CURVE, PULL } from "./examples.ts";

function importedBack(text: string): BenchTest {
  const table = readCsv(text);
  const { fields, holes } = headOf(table.head);
  const mapping = guessMapping(table.header);
  const { good } = readPoints({ table, mapping, commonSpeed: "", holeKinds: holes.length });
  const [draft] = draftsOf({ kind: "curve", fields, holes, rows: [], units: {} }, good, false);
  return benchTest.parse(readDraft(draft).data);
}

describe("exportCsv, a curve test", () => {
  it.each([
    ["a bleed plate, mixed units and a row set aside", PLATE_CURVE],
    ["a flow meter", KNOWN_CURVE],
  ])("with %s imports back as the same test", (_with, test) => {
    expect(importedBack(exportCsv(test, { setUp: true }))).toEqual(test);
  });

  it("writes a column's one unit into its header, and each cell's own where there are several", () => {
    const lines = exportCsv(PLATE_CURVE, { setUp: true }).split("\r\n");
    const header = lines.find((line) => line.startsWith("Speed"));
    expect(header).toBe("Speed,Pressure [mmH2O],Current [A],Open 1,Open 2,Set aside");
    expect(lines).toContain("24000 rpm,120,1.2,0,0,");
    expect(lines).toContain("400 Hz,95.5,,4,0,");
    expect(lines).toContain('24000 rpm,-1e-7,,8,4,"plate lifted, redo"');
  });
});

describe("exportCsv, any test", () => {
  it("writes what stands above the rows as head lines", () => {
    const lines = exportCsv(PULL, { setUp: true }).split("\r\n");
    expect(lines).toContain("# kind = pull");
    expect(lines).toContain("# rigMass = 12.5 g");
    expect(lines).toContain("Held,Let go [g],Voltage [V],Shim [mm],Set aside");
  });

  it.each(["=1+2", "+cmd|' /C calc'!A0", "@SUM(A1)", "-2+3", "\t=1"])(
    "with a reason %j that a spreadsheet would run: guards it with an apostrophe, and reads it back without",
    (reason) => {
      const rows = PLATE_CURVE.rows.map((row, i) => (i === 0 ? { ...row, setAside: reason } : row));
      const test = benchTest.parse({ ...PLATE_CURVE, rows });
      const text = exportCsv(test, { setUp: true });
      expect(text).toMatch(/,"?'[=+@-]/);
      expect(importedBack(text)).toEqual(test);
    },
  );

  it("with a title that a spreadsheet would split into a formula: keeps it in one cell, and reads it back", () => {
    for (const title of ['Pane, =HYPERLINK("x")', 'a; =1 "b"', "two\nlines, =1"]) {
      const test = benchTest.parse({ ...KNOWN_CURVE, title });
      const text = exportCsv(test, { setUp: true });
      expect(text.split("\r\n").find((line) => line.includes("title"))).toMatch(/^"# title = .*"$/);
      expect(importedBack(text).title).toBe(test.title);
    }
  });

  it("is saved under a name that tells it apart", () => {
    expect(csvName(PULL)).toBe("2026-03-14-pull-test-side-pane-second-rotor.csv");
  });
});
