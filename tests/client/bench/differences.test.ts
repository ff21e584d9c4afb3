import { describe, expect, it } from "vitest";
import { differences } from "#client/views/bench/record/differences.ts";
import { withCell, withField, withoutRow } from "#client/views/bench/record/draft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import { PLATE_CURVE, PULL } from "./examples.ts";

describe("differences, two states of a test", () => {
  it("names each field that says something else, and nothing that is the same", () => {
    const before = writeDraft(PULL);
    const after = withCell(withField(before, "rigMass", "13 g"), 0, "letGo", "440 g");
    expect(differences(before, after)).toEqual([
      { path: "rigMass", label: "Rig mass", before: "12.5 g", after: "13 g" },
      { path: "rows.0.letGo", label: "Pull 1, let go", before: "430 g", after: "440 g" },
    ]);
    expect(differences(before, before)).toEqual([]);
  });

  it("shows a row that was taken out by what it said, row by row", () => {
    const before = writeDraft(PLATE_CURVE);
    const labels = differences(before, withoutRow(before, 2)).map(({ label, after }) => [label, after]);
    expect(labels).toEqual([
      ["Point 3, speed", ""],
      ["Point 3, pressure", ""],
      ["Point 3, open holes", ""],
      ["Point 3, reason", ""],
    ]);
  });

  it("shows a text as it is told to, a part by its name", () => {
    const before = writeDraft(PULL);
    const [difference] = differences(before, withField(before, "rotor", "c5"), (_path, text) => `<${text}>`);
    expect(difference).toMatchObject({ label: "Rotor", before: "<b8>", after: "<c5>" });
  });
});
