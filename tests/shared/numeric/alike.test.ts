import { describe, expect, it } from "vitest";
import { alike } from "#shared/numeric/alike.ts";

const TOLERANCE = 1e-9;

describe("plain data, alike to within rounding", () => {
  it.each<[string, unknown, unknown, boolean]>([
    ["numbers apart by less than it", 1e6, 1e6 * (1 + 1e-10), true],
    ["numbers apart by more", 1e6, 1e6 * (1 + 1e-8), false],
    ["a tiny number and 0", 1e-30, 0, false],
    ["0 and 0 of the other sign", 0, -0, true],
    ["not a number", Number.NaN, Number.NaN, false],
    ["lists of another length", [1, 2], [1, 2, 3], false],
    ["a list and an object", [1], { 0: 1 }, false],
    ["null and an object", null, {}, false],
    ["a key without a value, and none", { a: 1, b: undefined }, { a: 1 }, true],
    ["a key more", { a: 1, b: null }, { a: 1 }, false],
    ["other text", { a: "square" }, { a: "round" }, false],
    ["a number and its text", 1, "1", false],
    ["all of it nested", { a: [{ b: 2, c: "x" }] }, { a: [{ b: 2 + 1e-12, c: "x" }] }, true],
  ])("%s: as it should", (_, a, b, same) => {
    expect(alike(a, b, TOLERANCE)).toBe(same);
    expect(alike(b, a, TOLERANCE)).toBe(same);
  });
});
