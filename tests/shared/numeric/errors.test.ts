import { describe, expect, it } from "vitest";
import {
  answerOrNull,
  asProblem,
  NoConvergenceError,
  NotEnoughDataError,
  OutOfRangeError,
  requireNonNegative,
  requirePositive,
} from "#shared/numeric/errors.ts";

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

describe("asProblem", () => {
  it("of what is computed: is the answer", () => {
    expect(asProblem(() => 42)).toEqual({ answered: 42 });
    expect(answerOrNull(() => 42)).toBe(42);
  });

  it.each([
    [new OutOfRangeError("gap", -1, "0 or greater"), "gap is -1, allowed: 0 or greater."],
    [new NotEnoughDataError("Two points.", "Measure a third."), "Two points. Measure a third."],
    [new NoConvergenceError("No crossing was found", 9), "No crossing was found."],
  ])("of numbers without an answer, %s: is the sentence, ended once", (error, problem) => {
    const fail = () => {
      throw error;
    };
    expect(asProblem(fail)).toEqual({ problem });
    expect(answerOrNull(fail)).toBeNull();
  });

  it("of a fault of the code: throws it", () => {
    const fault = () => {
      throw new TypeError("x is undefined");
    };
    expect(() => asProblem(fault)).toThrow(TypeError);
    expect(() => answerOrNull(fault)).toThrow(TypeError);
  });
});
