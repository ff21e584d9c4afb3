import { describe, expect, it } from "vitest";
import { allOf, firstChoices, threeWay } from "#client/ui/merge/threeWay.ts";

type State = Readonly<Record<string, string>>;
const differ = (before: State, after: State) =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .filter((path) => before[path] !== after[path])
    .map((path) => ({ path, label: path, before: before[path] ?? "", after: after[path] ?? "" }));

const BASE = { title: "pull", mass: "12 g", note: "dry", air: "18 °C" };

describe("two corrections of one record", () => {
  it("show each field in which they differ, and who changed it; where both say the same, nothing", () => {
    const mine = { ...BASE, title: "mine", mass: "13 g", air: "19 °C" };
    const theirs = { ...BASE, title: "theirs", note: "wet", air: "19 °C" };
    const said = threeWay(BASE, mine, theirs, differ).map(({ path, changedBy }) => [path, changedBy]);
    expect(said).toEqual([
      ["title", "both"],
      ["mass", "mine"],
      ["note", "theirs"],
    ]);
  });

  it("choose by themselves what one side alone changed, and leave the rest to their reader", () => {
    const conflicts = threeWay(
      BASE,
      { ...BASE, title: "a", mass: "1 g" },
      { ...BASE, title: "b", note: "c" },
      differ,
    );
    expect([...firstChoices(conflicts)]).toEqual([
      ["mass", "mine"],
      ["note", "theirs"],
    ]);
    expect([...allOf(conflicts, "theirs").values()]).toEqual(["theirs", "theirs", "theirs"]);
  });

  it("of which the beginning isn't known, leave every field to their reader", () => {
    const conflicts = threeWay(null, { ...BASE, title: "a" }, { ...BASE, note: "c" }, differ);
    expect(conflicts.map(({ changedBy }) => changedBy)).toEqual(["both", "both"]);
    expect(firstChoices(conflicts).size).toBe(0);
  });
});
