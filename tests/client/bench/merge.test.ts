import { describe, expect, it } from "vitest";
import { allOf, firstChoices, type Side, threeWay } from "#client/ui/merge/threeWay.ts";
import { byPlace, differences } from "#client/views/bench/record/differences.ts";
import {
  type Draft,
  withCell,
  withField,
  withHole,
  withNewRow,
  withoutRow,
} from "#client/views/bench/record/draft.ts";
import { merged } from "#client/views/bench/record/merge.ts";
import { readDraft } from "#client/views/bench/record/readDraft.ts";
import { writeDraft } from "#client/views/bench/record/writeDraft.ts";
import type { BenchTest } from "#shared/model/tests/index.ts";
import { PLATE_CURVE, PULL } from "./examples.ts";

const dataOf = (draft: Draft) => {
  const { data, errors } = readDraft(draft);
  expect([...errors]).toEqual([]);
  return data as unknown as BenchTest;
};
const conflictsOf = (base: Draft, mine: Draft, theirs: Draft) =>
  threeWay(base, mine, theirs, (before, after) => differences(before, after));

describe("two corrections of a test", () => {
  const base = writeDraft(PULL);
  const mine = withCell(withField(base, "title", "mine"), 0, "letGo", "440 g");
  const theirs = withCell(withField(base, "note", "theirs"), 0, "held", "420 g");

  it("that touch other fields, become one that says both", () => {
    const conflicts = conflictsOf(base, mine, theirs);
    const test = dataOf(merged(mine, theirs, firstChoices(conflicts)));
    expect(test).toMatchObject({ title: "mine", note: "theirs" });
    expect(test.rows[0]).toMatchObject({
      held: { value: 420, unit: "g" },
      letGo: { value: 440, unit: "g" },
    });
    expect(test.rows[1]).toEqual(PULL.rows[1]);
  });

  it.each(["mine", "theirs"] as const)("chosen whole, are %s", (side: Side) => {
    for (const [a, b] of [
      [mine, theirs],
      [withoutRow(base, 0), withNewRow(theirs, new Set())],
      [theirs, withoutRow(mine, 1)],
    ]) {
      const conflicts = conflictsOf(base, a, b);
      const whole = merged(a, b, allOf(conflicts, side));
      expect(differences(byPlace(side === "mine" ? a : b), whole)).toEqual([]);
    }
  });

  it("of which one has a row more, have it; of which one has a row less, don't", () => {
    const longer = withCell(withNewRow(base, new Set()), 2, "held", "500 g");
    expect(merged(mine, longer, firstChoices(conflictsOf(base, mine, longer))).rows).toHaveLength(3);
    const shorter = withoutRow(base, 1);
    const conflicts = conflictsOf(base, mine, shorter);
    expect(dataOf(merged(mine, shorter, firstChoices(conflicts))).rows).toHaveLength(1);
  });

  it("of the same reading, are the one that was chosen", () => {
    const other = withCell(base, 0, "letGo", "450 g");
    const path = "rows.0.letGo";
    expect(firstChoices(conflictsOf(base, mine, other)).has(path)).toBe(false);
    const chosen = dataOf(merged(mine, other, new Map([[path, "theirs"]])));
    expect(chosen.rows[0]).toMatchObject({ letGo: { value: 450, unit: "g" } });
  });
});

describe("two corrections of a test with a plate", () => {
  it("change hole by hole, and keep the counts of open holes", () => {
    const base = writeDraft(PLATE_CURVE);
    const mine = withHole(base, 0, { diameter: "3.1 mm" });
    const theirs = withHole(base, 1, { count: "5" });
    const test = dataOf(merged(mine, theirs, firstChoices(conflictsOf(base, mine, theirs))));
    const expected = structuredClone(PLATE_CURVE) as BenchTest & {
      plate: { holes: { diameter: object; count: number }[] };
    };
    expected.plate.holes[0].diameter = { value: 3.1, unit: "mm" };
    expected.plate.holes[1].count = 5;
    expect(test).toEqual(expected);
  });
});
