import { afterEach, describe, expect, it } from "vitest";
import type { Draft } from "#client/views/bench/record/draft.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { draftKind } from "#client/views/bench/record/settledDraft.ts";
import { shownAs, showUnitsOf, UNIT_SETS } from "#shared/units/showing.ts";

afterEach(() => {
  showUnitsOf(() => UNIT_SETS.metric);
});

const HOLE = {
  key: 0,
  diameter: "3",
  thickness: "2 mm",
  count: "8",
  edge: "sharp",
  dischargeCoefficient: "",
};
const LEAK: Draft = {
  kind: "leak",
  fields: { title: "12", date: "2026-03-14", skirt: "s", surface: "t", gap: "0.6", flowFrom: "bleed-plate" },
  holes: [HOLE],
  rows: [{ key: 0, cells: { pressure: "300" }, open: ["4"], aside: null }],
  units: {},
};

describe("a test's draft that is read in a book of other units", () => {
  it("says what each bare number meant, in fields and holes by itself, in rows by its column's head", () => {
    const settled = draftKind("leak").settled(LEAK);
    expect(settled.fields).toEqual({ ...LEAK.fields, gap: "0.6 mm" });
    expect(settled.holes).toEqual([{ ...HOLE, diameter: "3 mm" }]);
    expect(settled.rows).toEqual(LEAK.rows);
    expect(settled.units.pressure).toBe("Pa");
  });

  it("says the same under inches as it did under millimetres", () => {
    const before = readDraft(LEAK).data;
    const settled = draftKind("leak").settled(LEAK);
    expect(shownAs(UNIT_SETS.inch, () => readDraft(settled).data)).toEqual(before);
    expect(shownAs(UNIT_SETS.inch, () => readDraft(LEAK).data)).not.toEqual(before);
  });
});
