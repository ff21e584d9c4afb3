import { describe, expect, it } from "vitest";
import { firstInWords, gradeOf } from "#client/ui/verdictWords.ts";

describe("gradeOf", () => {
  it.each([
    [0, "bad"],
    [0.999, "bad"],
    [1, "near"],
    [1.499, "near"],
    [1.5, "good"],
    [null, "good"],
  ] as const)("grades a margin of %s, with a target of 1.5, as %s", (margin, grade) => {
    expect(gradeOf(margin, 1.5, "holds").grade).toBe(grade);
    expect(gradeOf(margin, 1.5, null).grade).toBe(grade);
  });

  it.each(["bursts", "burns", "falls", "over-rating"] as const)(
    "calls no margin good and says of none that it holds, in a build of the state %s",
    (state) => {
      for (const margin of [0.5, 1.2, 7.12, null]) {
        const { grade, word } = gradeOf(margin, 1.5, state);
        expect(grade).not.toBe("good");
        expect(word).not.toMatch(/holds/);
      }
    },
  );

  it.each(["bursts", "burns"] as const)(
    "takes margins of every size for nothing, in a build that %s",
    (state) => {
      for (const margin of [1, 1.2, 7.12, null]) expect(gradeOf(margin, 1.5, state).grade).toBe("void");
    },
  );

  it("takes one below 1 for a fall in a build that burns later, and for nothing in one that bursts first", () => {
    expect(gradeOf(0.9, 1.5, "burns")).toEqual({ grade: "bad", word: "falls" });
    expect(gradeOf(0.9, 1.5, "bursts").grade).toBe("void");
  });
});

describe("firstInWords", () => {
  it("names what ends the hold, when several tie, with 'and'", () => {
    expect(firstInWords(["liftOff", "slide"])).toBe("lifts off and slips");
    expect(firstInWords(["tip"])).toBe("tips");
  });
});
