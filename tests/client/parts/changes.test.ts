import { describe, expect, it } from "vitest";
import { changesOf } from "#client/views/parts/changes.ts";
import { FORMS } from "#client/views/parts/forms.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const book = demoBook();
const formOf = (collection: string) => {
  const form = FORMS.find((each) => each.collection === collection);
  if (!form) throw new Error(`No form of ${collection}.`);
  return form;
};

describe("what a part said before", () => {
  it("is listed field by field, numbers in the form's units, parts by name", () => {
    const { data } = book.builds[0];
    const other = book.motors.find(({ id }) => id !== data.motor);
    const after = {
      ...data,
      motor: other?.id,
      vehicle: { ...data.vehicle, mass: 0.412 },
      uncertainty: { ...data.uncertainty, "vehicle.mass": 0.002 },
    };
    const changes = changesOf(formOf("builds"), data, after, book);
    const said = new Map(changes.map(({ path, before, after: then }) => [path, [before, then]]));
    expect(said.get("motor")?.[1]).toBe(other?.data.name);
    expect(said.get("vehicle.mass")?.[1]).toMatch(/^412\s?g/);
    expect([...said.keys()].some((path) => path.includes("uncertainty"))).toBe(true);
  });

  it("names a row that a list gained, and a reason of retiring that has no field", () => {
    const { data } = book.rotors[0];
    const after = { ...data, sizes: [...data.sizes, { diameter: 0.07 }], retired: "cracked" };
    const changes = changesOf(formOf("rotors"), data, after, book);
    const place = data.sizes.length;
    expect(changes).toContainEqual(
      expect.objectContaining({ path: `sizes.${place}.diameter`, before: "", after: "70 mm" }),
    );
    expect(changes).toContainEqual(expect.objectContaining({ label: "Retired because", after: "cracked" }));
  });

  it("that did not change is nothing", () => {
    const { data } = book.builds[0];
    expect(changesOf(formOf("builds"), data, structuredClone(data), book)).toEqual([]);
  });
});
