import { describe, expect, it } from "vitest";
import {
  countCombinations,
  MOST_COMBINATIONS,
  steppedValues,
  TooManyCombinationsError,
} from "#shared/decide/choose/count.ts";
import { prepare } from "#shared/decide/choose/prepare.ts";
import { NotEnoughDataError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { caught } from "./caught.ts";
import { motor, question, rotor, skirt } from "./questions.ts";

describe("countCombinations, of a question", () => {
  it("with 3 motors, 6 rotor sizes, 2 packs, 2 throttles and 5 gaps counts 360", () => {
    expect(countCombinations(question())).toBe(3 * 6 * 2 * 2 * 5);
  });

  it.each(["motors", "rotors", "packs", "skirts", "duties"] as const)(
    "without %s names what is empty",
    (name) => {
      const error = caught(() => countCombinations(question({ [name]: [] })), NotEnoughDataError);
      expect(error.path).toBe(name);
    },
  );

  it("whose rotors have no size, or whose skirts no gap, names them", () => {
    expect(
      caught(() => countCombinations(question({ rotors: [rotor("r", { sizes: [] })] })), NotEnoughDataError)
        .path,
    ).toBe("rotors");
    expect(
      caught(() => countCombinations(question({ skirts: [skirt("s", { gaps: [] })] })), NotEnoughDataError)
        .path,
    ).toBe("skirts");
  });
});

describe("a billion combinations", () => {
  const motors = Array.from({ length: 1000 }, () => motor("m"));
  const gaps = Array.from({ length: 100 }, (_, i) => 0.0002 + 1e-5 * i);
  const duties = Array.from({ length: 5000 / 6 }, (_, i) => (i + 1) / 1000);
  const billion = question({
    motors,
    skirts: [skirt("s", { gaps })],
    duties,
    packs: question().packs.slice(0, 2),
  });

  it("are refused before any work, with the count and what to narrow first", () => {
    const began = performance.now();
    const error = caught(() => prepare(billion), TooManyCombinationsError);
    expect(error.count).toBe(1000 * 6 * 2 * 833 * 100);
    expect(error.most).toBe(MOST_COMBINATIONS);
    expect(error.lists[0]).toEqual({ name: "motors", entries: 1000 });
    expect(error.message).toContain("999,600,000");
    expect(error.need).toContain("motors");
    expect(performance.now() - began).toBeLessThan(1000);
  });

  it("say how many of the longest list would do, where that alone does it", () => {
    const error = caught(() => countCombinations(question({ motors }), 50_000), TooManyCombinationsError);
    expect(error.count).toBe(120_000);
    expect(error.need).toContain("416 of its 1000");
    expect(countCombinations(question({ motors: motors.slice(0, 416) }), 50_000)).toBeLessThanOrEqual(50_000);
  });
});

describe("steppedValues, of a range", () => {
  it("holds both ends where the step divides it, in spite of rounding", () => {
    const values = steppedValues("gaps", { from: 0.0003, to: 0.0009, step: 0.0001 });
    expect(values).toHaveLength(7);
    expect(values[6]).toBeCloseToRelative(0.0009, 1e-12);
  });

  it("stops below its end where the step does not divide it", () => {
    expect(steppedValues("d", { from: 1, to: 2, step: 0.4 })).toEqual([1, 1.4, 1.8]);
  });

  it("of one value takes any step", () => {
    expect(steppedValues("d", { from: 1, to: 1, step: 0 })).toEqual([1]);
  });

  it.each([
    [{ from: 1, to: 2, step: 0 }, "d.step"],
    [{ from: 1, to: 2, step: -1 }, "d.step"],
    [{ from: 1, to: 2, step: Number.NaN }, "d.step"],
    [{ from: 1, to: 2, step: 1e-9 }, "d.step"],
    [{ from: 2, to: 1, step: 0.1 }, "d.to"],
    [{ from: Number.NaN, to: 1, step: 0.1 }, "d.from"],
  ])("%o is refused by name", (range, path) => {
    expect(caught(() => steppedValues("d", range), OutOfRangeError).quantity).toBe(path);
  });
});
