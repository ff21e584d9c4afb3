import { describe, expect, it } from "vitest";
import { governsInWords, gradeOf } from "#client/ui/verdictWords.ts";

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

describe("governsInWords", () => {
  it("names modes, when several tie, with 'and'", () => {
    expect(governsInWords(["liftOff", "slide"])).toBe("lift-off and slide");
    expect(governsInWords(["tip"])).toBe("tip");
  });
});
