import { afterEach, describe, expect, it } from "vitest";
import { setDecimalMark } from "#shared/units/decimalMark.ts";
import { formatDigits, formatPlain } from "#shared/units/format.ts";

afterEach(() => setDecimalMark("."));

describe("a number to so many significant digits", () => {
  it.each([
    [0.012345, 3, "0.0123"],
    [9.996, 3, "10.0"],
    [0.5, 3, "0.500"],
    [1234.5, 3, "1230"],
    [123_456, 3, "123\u202f000"],
    [-2.25, 2, "\u22122.3"],
    [0, 3, "0"],
  ])("%s to %s: %s, never by powers of ten", (value, digits, text) => {
    expect(formatDigits(value, digits)).toBe(text);
  });

  it.each([
    [0.5, 3, "0.5"],
    [12, 3, "12"],
    [1 / 3, 4, "0.3333"],
  ])("%s, as short as it is with at most %s: %s", (value, digits, text) => {
    expect(formatPlain(value, digits)).toBe(text);
  });

  it("has a comma where the reader writes one", () => {
    setDecimalMark(",");
    expect([formatDigits(0.25, 2), formatPlain(2.5)]).toEqual(["0,25", "2,5"]);
  });
});
