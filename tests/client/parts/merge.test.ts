import { describe, expect, it } from "vitest";
import { allOf, firstChoices, threeWay } from "#client/ui/merge/threeWay.ts";
import { differencesOf } from "#client/views/parts/changes.ts";
import { draftOf, type FormState, readForm } from "#client/views/parts/draft.ts";
import { FORMS } from "#client/views/parts/forms.ts";
import { merged } from "#client/views/parts/merge.ts";
import type { FormSpec } from "#client/views/parts/spec.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const formOf = (collection: string): FormSpec => {
  const form = FORMS.find((each) => each.collection === collection);
  if (!form) throw new Error(`No form of ${collection}.`);
  return form;
};
const conflictsOf = (form: FormSpec, base: FormState, mine: FormState, theirs: FormState) =>
  threeWay(base, mine, theirs, (before, after) => differencesOf(form, before, after, book));

describe("two corrections of a part", () => {
  const form = formOf("rotors");
  const { data } = book.rotors[0];
  const base = draftOf(form, data);
  const mine = draftOf(form, { ...data, name: "mine" });
  const theirs = draftOf(form, { ...data, note: "theirs", sizes: [...data.sizes, { diameter: 0.07 }] });

  it("that touch other fields, become one that says both, a new row of a list included", () => {
    const choices = firstChoices(conflictsOf(form, base, mine, theirs));
    const { data: read, refused } = readForm(form, merged(form, mine, theirs, choices), data);
    expect(refused).toEqual([]);
    expect(read).toMatchObject({ name: "mine", note: "theirs" });
    expect((read.sizes as unknown[]).at(-1)).toEqual({ diameter: 0.07 });
  });

  it("chosen whole, are one of the two", () => {
    const conflicts = conflictsOf(form, base, mine, theirs);
    expect(differencesOf(form, mine, merged(form, mine, theirs, allOf(conflicts, "mine")), book)).toEqual([]);
    expect(differencesOf(form, theirs, merged(form, mine, theirs, allOf(conflicts, "theirs")), book)).toEqual(
      [],
    );
  });
});

describe("a skirt's length and area", () => {
  it("follow from the outline that was chosen", () => {
    const form = formOf("skirts");
    const outline = (length: number) => ({
      length: { value: length, unit: "mm" },
      width: { value: 90, unit: "mm" },
    });
    const { outline: _none, ...plain } = { ...book.skirts[0].data, outline: undefined };
    const base = draftOf(form, plain);
    const theirs = draftOf(form, { ...plain, outline: outline(110), perimeter: 0.4, area: 0.0099 });
    const mine = { ...base, values: { ...base.values, name: "mine" } };
    const conflicts = conflictsOf(form, base, mine, theirs).filter(({ path }) => path === "outline");
    const read = readForm(form, merged(form, mine, theirs, firstChoices(conflicts)), plain).data;
    // 2 × (110 + 90) mm, 110 × 90 mm²
    expect(read.perimeter).toBeCloseToRelative(0.4, 1e-3);
    expect(read.area).toBeCloseToRelative(0.0099, 1e-3);
  });
});
