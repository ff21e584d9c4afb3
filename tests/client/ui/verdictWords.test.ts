import { describe, expect, it } from "vitest";
import { governsInWords, gradeOf, worstName } from "../../../client/ui/verdictWords.ts";

describe("gradeOf", () => {
  it.each([
    [0, "bad"],
    [0.999, "bad"],
    [1, "near"],
    [1.499, "near"],
    [1.5, "good"],
    [null, "good"],
  ] as const)("grades a margin of %s, with a target of 1.5, as %s", (margin, grade) => {
    expect(gradeOf(margin, 1.5)).toBe(grade);
  });
});

describe("words", () => {
  it("names modes, when several tie, with 'and'", () => {
    expect(governsInWords(["liftOff", "slide"])).toBe("lift-off and slide");
    expect(governsInWords(["tip"])).toBe("tip");
  });

  it.each([
    [90, "the wall"],
    [180, "the ceiling"],
    [127, "the overhang"],
    [60, "the slope"],
    [0, "the floor"],
  ])("calls %s°, as a worst attitude, %s", (angle, name) => {
    expect(worstName(angle)).toBe(name);
  });
});
