import { afterEach, describe, expect, it, vi } from "vitest";
import { keepDraft } from "#client/state/drafts.ts";
import { keptOver } from "#client/views/parts/editing.ts";
import { FORMS } from "#client/views/parts/forms.ts";
import { settledState } from "#client/views/parts/settledState.ts";
import { COLLECTION_NAMES } from "#shared/model/collections.ts";
import { showUnitsOf, UNIT_SETS } from "#shared/units/showing.ts";

const formOf = (collection: string) => {
  const form = FORMS.find((each) => each.collection === collection);
  if (!form) throw new Error(`There is no form of ${COLLECTION_NAMES.find((each) => each === collection)}.`);
  return form;
};
const FORM = formOf("motors");

const state = { values: { name: "half typed", kv: "2300 rpm/V" }, rows: { sizes: 1 } };

function store(): void {
  const kept = new Map<string, string>();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => kept.set(key, text),
  });
}

afterEach(() => {
  showUnitsOf(() => UNIT_SETS.metric);
  vi.unstubAllGlobals();
});

describe("what was typed into a part's form", () => {
  it("over the same revision: comes back as it was", () => {
    store();
    keepDraft("motors/m1", state, 3);
    expect(keptOver(FORM, "motors/m1", 3)?.content).toEqual(state);
  });

  it("over a revision that was replaced meanwhile: does not come back over the newer one", () => {
    store();
    keepDraft("motors/m1", state, 3);
    expect(keptOver(FORM, "motors/m1", 4)).toBeNull();
  });

  it.each([
    ["numbers where texts belong", { ...state, values: { kv: 2300 } }],
    ["no rows", { values: {} }],
    ["nothing", null],
  ])("with %s: does not come back", (_what, content) => {
    store();
    keepDraft("motors/new", content, null);
    expect(keptOver(FORM, "motors/new", null)).toBeNull();
  });
});

describe("bare numbers in a part's form", () => {
  it("carry the units that they were typed under into a book of others: in fields, rows and uncertainties", () => {
    store();
    const values = {
      name: "12",
      perimeter: "250",
      area: "4 in^2",
      gap: "0.6",
      "uncertainty.gap": "0.05",
      friction: "0.3",
      "openings.0.area": "4",
    };
    keepDraft("skirts/new", { values, rows: { openings: 1 } }, null);
    showUnitsOf(() => UNIT_SETS.inch);
    expect(keptOver(formOf("skirts"), "skirts/new", null)?.content.values).toEqual({
      ...values,
      perimeter: "250 mm",
      gap: "0.6 mm",
      "uncertainty.gap": "0.05 mm",
      "openings.0.area": "4 mm²",
    });
  });

  it("are written out with the inch where that is meant", () => {
    showUnitsOf(() => UNIT_SETS.inch);
    const { values } = settledState(formOf("skirts"), { values: { perimeter: "10", gap: "3/64" }, rows: {} });
    expect(values).toEqual({ perimeter: "10 in", gap: "3/64 in" });
  });
});
