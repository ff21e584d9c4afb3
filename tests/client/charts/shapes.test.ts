import { describe, expect, it } from "vitest";
import { shapePath } from "#client/charts/draw/shapes.ts";

/** Twice as many tests as there are shapes. */
const TESTS = 14;

describe("the shape of a test", () => {
  it("is another for each, past the last shape as well", () => {
    const paths = Array.from({ length: TESTS }, (_, i) => shapePath(i));
    expect(new Set(paths).size).toBe(TESTS);
  });

  it("is drawn from wherever the pen stands, for any test", () => {
    for (let i = 0; i < TESTS; i++) expect(shapePath(i)).toMatch(/^m[^MLHVA]*$/);
  });
});
