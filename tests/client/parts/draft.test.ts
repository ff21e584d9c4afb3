import { describe, expect, it } from "vitest";
import { draftOf, type FormState, readForm, toggledMark, withoutRow } from "#client/views/parts/draft.ts";
import { FORMS } from "#client/views/parts/forms.ts";
import { getAt, setAt } from "#client/views/parts/paths.ts";
import type { FormSpec, ListSpec } from "#client/views/parts/spec.ts";
import { COLLECTIONS } from "#shared/model/schemas.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const form = (collection: FormSpec["collection"]): FormSpec => {
  const found = FORMS.find((each) => each.collection === collection);
  if (!found) throw new Error(`no form for ${collection}`);
  return found;
};

const with_ = (state: FormState, values: FormState["values"], rows: FormState["rows"] = {}): FormState => ({
  values: { ...state.values, ...values },
  rows: { ...state.rows, ...rows },
});

describe("readForm", () => {
  it.each(FORMS.map((each) => [each.collection, each] as const))(
    "gives back what it was filled with, for every demo record of the %s, to 11 digits",
    (collection, spec) => {
      const records = demoBook()[collection];
      expect(records.length).toBeGreaterThan(0);
      for (const { data } of records) {
        const { data: again, refused } = readForm(spec, draftOf(spec, data), data);
        expect(refused).toEqual([]);
        const parsed = COLLECTIONS[collection].parse(again);
        expect(rounded(parsed)).toEqual(rounded(COLLECTIONS[collection].parse(data)));
      }
    },
  );

  it("stores SI, with the units typed, and leaves empty fields out", () => {
    const skirt = form("skirts");
    const filled = with_(draftOf(skirt, {}), {
      name: "  Soft lip ",
      perimeter: "25 cm",
      area: "40 cm²",
      land: "3 mm",
      gap: "0.6 mm",
      "uncertainty.gap": "0.1 mm",
    });
    const { data, refused } = readForm(skirt, filled);
    expect(refused).toEqual([]);
    expect(rounded(data)).toEqual({
      name: "Soft lip",
      perimeter: 0.25,
      area: 0.004,
      land: 0.003,
      gap: 0.0006,
      gapBasis: "set",
      edge: "square",
      uncertainty: { gap: 0.0001 },
    });
  });

  it("names each field that is needed, with nothing filled in, once", () => {
    const neededOf = (collection: "motors" | "skirts") =>
      readForm(form(collection), draftOf(form(collection), {})).refused.map(({ path }) => path);
    expect(neededOf("skirts")).toEqual(["name", "perimeter", "area", "land", "gap"]);
    // a motor test gives what its maker doesn't state
    expect(neededOf("motors")).toEqual(["name"]);
  });

  it("says what it read, with letters where a number belongs, beside that field", () => {
    const pack = form("packs");
    const { refused } = readForm(pack, with_(draftOf(pack, {}), { series: "two" }));
    expect(refused.find(({ path }) => path === "series")?.message).toMatch(/Read "two"/);
  });

  it("stores the cell's curve as pairs, from its rows, in order", () => {
    const pack = form("packs");
    const filled = with_(
      draftOf(pack, {}),
      {
        "cell.curve.0.0": "0 %",
        "cell.curve.0.1": "3.3 V",
        "cell.curve.1.0": "100 %",
        "cell.curve.1.1": "4.2 V",
      },
      { "cell.curve": 2 },
    );
    expect(getAt(readForm(pack, filled).data, "cell.curve")).toEqual([
      [0, 3.3],
      [1, 4.2],
    ]);
  });

  it("keeps what has no field here, with a record corrected, as it was", () => {
    const before = { name: "B8", kind: "ducted", sizes: [{ diameter: 0.042 }], uncertainty: { other: 1 } };
    const { data } = readForm(form("rotors"), draftOf(form("rotors"), before), before);
    expect(data).toMatchObject({ kind: "ducted", uncertainty: { other: 1 } });
  });
});

describe("rows and marks", () => {
  it("moves later rows up, with one in the middle taken out, without loss", () => {
    const rotor = form("rotors");
    const sizes = rotor.sections[0].fields.find((field): field is ListSpec => field.kind === "list");
    if (!sizes) throw new Error("the rotor's form has no sizes");
    const state = draftOf(rotor, { sizes: [{ diameter: 0.03 }, { diameter: 0.04 }, { diameter: 0.05 }] });
    const { data } = readForm(rotor, withoutRow(state, sizes, 1));
    expect(data.sizes).toEqual([{ diameter: 0.03 }, { diameter: 0.05 }]);
  });

  it("toggles a mark, twice, back to none", () => {
    const marked = toggledMark("gap", "land");
    expect(marked).toBe("gap,land");
    expect(toggledMark(marked, "gap")).toBe("land");
  });
});

describe("setAt", () => {
  it("takes an emptied group away, with its last key unset, so that no half group is sent", () => {
    expect(setAt({ a: 1, geometry: { bladeCount: 8 } }, "geometry.bladeCount", undefined)).toEqual({ a: 1 });
  });
});

/** Numbers to 11 significant digits: a field shows 12. */
function rounded(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_key, each) => (typeof each === "number" ? Number(each.toPrecision(11)) : each)),
  );
}
