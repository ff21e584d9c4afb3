import { describe, expect, it } from "vitest";
import { chooseUnit, createForm, leaveCell, typeCell } from "#client/views/bench/forms/model.ts";
import { withNewRow } from "#client/views/bench/record/draft.ts";
import { unitsOf, writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { benchTest } from "#shared/model/tests/index.ts";
import type { DimensionName } from "#shared/units/dimensions.ts";
import { MOTOR, PULL } from "./examples.ts";

/** A form with one row of readings in it and one empty row below; what is typed is left at once. */
function formOf(test: typeof PULL) {
  const form = createForm(null, withNewRow({ ...writeDraft(test), units: {} }, new Set()), null);
  const key = form.draft.value.rows[form.draft.value.rows.length - 1].key;
  const type = (row: number, column: string, text: string, name: DimensionName) => {
    typeCell(form, row, column, text);
    leaveCell(form, row, column, { dimension: name, unit: form.draft.value.units[column] });
  };
  const cell = (row: number, column: string) =>
    form.draft.value.rows.find((each) => each.key === row)?.cells[column];
  return { form, key, type, cell };
}

describe("a unit typed in one cell of a column", () => {
  it.each([
    [PULL, "held", "load", "1.2 kg", "900", "900 g"],
    [MOTOR, "current", "current", "342 mA", "3.11", "3.11 A"],
  ] as const)(
    "changes that cell alone: the next is in the header's unit",
    (test, column, name, first, second, expected) => {
      const { key, type, cell } = formOf(test);
      type(0, column, first, name);
      type(key, column, second, name);
      expect(cell(0, column)).toBe(first);
      expect(cell(key, column)).toBe(expected);
    },
  );

  it("with another unit chosen in the header: that one is meant from then on, what is typed stays", () => {
    const { form, key, type, cell } = formOf(PULL);
    type(0, "held", "410", "load");
    chooseUnit(form, "held", "N");
    type(key, "held", "4", "load");
    expect(cell(0, "held")).toBe("410 g");
    expect(cell(key, "held")).toBe("4 N");
  });
});

describe("unitsOf, a test with readings of a column in several units", () => {
  it("is the unit of most of them, whichever was typed last", () => {
    const held = (value: number, unit: string) => ({ held: { value, unit }, letGo: null });
    const rows = [held(410, "g"), held(430, "g"), held(4, "N")];
    expect(unitsOf(benchTest.parse({ ...PULL, rows })).held).toBe("g");
  });
});
