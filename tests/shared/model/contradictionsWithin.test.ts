import { describe, expect, it } from "vitest";
import { contradictionsWithin } from "#shared/model/contradictionsWithin.ts";
import { type Skirt, skirt } from "#shared/model/parts/skirt.ts";
import { demoBook } from "#tests/support/demoBook.ts";

const lip = (perimeter: number, area: number): Skirt =>
  skirt.parse({ name: "lip", perimeter, area, land: 0.003, gap: 0.0006 });
const paths = (data: Skirt) => contradictionsWithin("skirts", data).map(({ path }) => path);

describe("a lip and the area inside it", () => {
  // Isoperimetric inequality: P² ≥ 4πA, equal for a circle alone (Blåsjö, Amer. Math. Monthly 112 (2005) 526).
  it.each([
    ["a circle of 70 mm, to all digits", Math.PI * 0.07, (Math.PI / 4) * 0.07 ** 2],
    ["that circle, both rounded to three digits", 0.22, 3.85e-3],
    ["a rectangle of 110 by 90 mm", 0.4, 9.9e-3],
    ["a slot", 0.2, 1e-5],
  ])("%s: can be", (_what, perimeter, area) => {
    expect(paths(lip(perimeter, area))).toEqual([]);
  });

  it.each([
    ["a tenth of the length", 0.04, 9.9e-3],
    ["ten times the area", 0.25, 4e-2],
    ["two percent more than a circle", Math.PI * 0.07, 1.02 * (Math.PI / 4) * 0.07 ** 2],
  ])("%s: can't be, both fields are named", (_what, perimeter, area) => {
    expect(paths(lip(perimeter, area))).toEqual(["perimeter", "area"]);
  });

  it("that can't be: is told what was read and what a circle would be", () => {
    const [length, area] = contradictionsWithin("skirts", lip(0.2, 0.004));
    expect(length.message).toBe(
      "Read 200\u202fmm round 40.0\u202fcm²; allowed: at least 224\u202fmm, the length of a circle round that area.",
    );
    expect(area.message).toMatch(
      /^Read 40\.0\u202fcm² inside a lip of 200\u202fmm; allowed: at most 31\.8\u202fcm²/,
    );
  });

  it("of the demo: can be", () => {
    for (const { data } of demoBook().skirts) expect(paths(data), data.name).toEqual([]);
  });
});
