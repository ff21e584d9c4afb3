import { describe, expect, it } from "vitest";
import { governsInWords, gradeOf, listedAttitudes, marginText, worstName } from "#client/ui/verdictWords.ts";

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
  it("names attitudes, up to five, each; of a dozen the first three and how many others", () => {
    const names = Array.from({ length: 12 }, (_, i) => `pane ${i + 1}`);
    expect(listedAttitudes(names.slice(0, 5), "or")).toBe("pane 1, pane 2, pane 3, pane 4 or pane 5");
    expect(listedAttitudes(names, "or")).toBe("pane 1, pane 2, pane 3 or 9 other attitudes");
  });

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

describe("marginText", () => {
  it.each([
    [1.684, "1.68\u2009×"],
    [1, "1.00\u2009×"],
    [0.998, "0.998\u2009×"],
    [0.99999, "just under 1\u2009×"],
    [0.9949, "0.99\u2009×"],
    [null, "no pull needed"],
  ])("writes %s, as a margin, as %s, and nothing below 1 as 1", (margin, text) => {
    expect(marginText(margin)).toBe(text);
  });
});
