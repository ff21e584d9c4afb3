import { describe, expect, it } from "vitest";
import { counted, inWords } from "#client/ui/count.ts";
import { listed, offBy, percent } from "#client/views/curves/curveWords.ts";

describe("words of the Curves view", () => {
  it.each([
    [0.0142, "1.4\u202f%"],
    [0.00317, "0.32\u202f%"],
    [0.1449, "14\u202f%"],
    [1.2345, "123\u202f%"],
    [-0.013, "−1.3\u202f%"],
    [0, "0\u202f%"],
    [Number.NaN, "–"],
  ])("%s as percent, two digits, is %s", (share, text) => {
    expect(percent(share)).toBe(text);
  });

  it("counts one and many", () => {
    expect([counted(1, "test"), counted(3, "test"), inWords(2), inWords(40)]).toEqual([
      "1 test",
      "3 tests",
      "two",
      "40",
    ]);
  });

  it("lists none, one, two and three", () => {
    expect([listed([]), listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"])]).toEqual([
      "",
      "a",
      "a and b",
      "a, b and c",
    ]);
  });

  it("says which way a reading is off", () => {
    expect([offBy(0.021), offBy(-0.004)]).toEqual(["2.1\u202f% high", "0.40\u202f% low"]);
  });
});
