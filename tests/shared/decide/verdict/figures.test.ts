import { describe, expect, it } from "vitest";
import { marginText, pairText, percentText, rpmText, timeText } from "#shared/decide/verdict/figures.ts";

describe("marginText", () => {
  it.each([
    [1.684, "1.68\u202f×"],
    [1, "1.00\u202f×"],
    [0.998, "0.998\u202f×"],
    [0.99999, "just under 1\u202f×"],
    [0.9949, "0.99\u202f×"],
    [null, "no pull needed"],
  ])("writes %s, as a margin, as %s, and nothing below 1 as 1", (margin, text) => {
    expect(marginText(margin)).toBe(text);
  });
});

const plain = (text: string) => text.replaceAll("\u202f", " ");

describe("figures beside what they are held against", () => {
  it.each([
    [0.92, "92 %"],
    [0.9999, "99.99 %"],
    [1.0004, "100.04 %"],
    [1, "100 %"],
  ])("writes a share of %s as %s: nothing but 1 reads as 100", (share, text) => {
    expect(plain(percentText(share))).toBe(text);
  });

  it("gives a figure and its limit so many digits that they differ, and no more", () => {
    expect(pairText(7.86, 7.4, "V", 1).map(plain)).toEqual(["7.9 V", "7.4 V"]);
    expect(pairText(7.404, 7.4, "V", 1).map(plain)).toEqual(["7.404 V", "7.400 V"]);
  });

  it("rounds a speed down, to hundreds: from there down it is true", () => {
    expect(plain(rpmText(2730))).toBe("26 000 rpm");
  });

  it.each([
    [0.4, "less than a second"],
    [34.2, "34 s"],
    [204, "3.4 min"],
  ])("writes %s s as %s", (time, text) => {
    expect(plain(timeText(time))).toBe(text);
  });
});
