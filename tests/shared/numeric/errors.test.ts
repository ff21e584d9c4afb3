import { describe, expect, it } from "vitest";
import { OutOfRangeError, requireNonNegative, requirePositive } from "#shared/numeric/errors.ts";

describe("guards, on numbers that are no measurement", () => {
  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])(
    "requirePositive refuses %s and names it",
    (value) => {
      expect(() => requirePositive("diameter", value)).toThrow(OutOfRangeError);
      expect(() => requirePositive("diameter", value)).toThrow(/diameter/);
    },
  );

  it.each([-1e-300, Number.NaN, Number.NEGATIVE_INFINITY])("requireNonNegative refuses %s", (value) => {
    expect(() => requireNonNegative("gap", value)).toThrow(OutOfRangeError);
  });

  it("lets zero through where zero is allowed", () => {
    expect(requireNonNegative("gap", 0)).toBe(0);
  });
});
