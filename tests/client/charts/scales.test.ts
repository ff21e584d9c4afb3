import { describe, expect, it } from "vitest";
import { between } from "#client/charts/draw/glide.ts";
import { scaleOf } from "#client/charts/draw/scales.ts";

describe("an axis as pixels", () => {
  it("even: puts its ends at the range's, the rest in proportion, beyond them as well, and reads pixels back", () => {
    const scale = scaleOf({ from: 2, to: 12 }, [300, 0]);
    expect([2, 12, 7, 14].map(scale)).toEqual([300, 0, 150, -60]);
    expect([300, 0, 150, -60].map(scale.invert)).toEqual([2, 12, 7, 14]);
  });

  it("logarithmic: each decade as wide as the next, and none of 0 or below", () => {
    const scale = scaleOf({ from: 1, to: 1000, log: true }, [0, 300]);
    for (const [value, at] of [
      [1, 0],
      [10, 100],
      [100, 200],
      [1000, 300],
    ]) {
      expect(scale(value)).toBeCloseTo(at, 9);
      expect(scale.invert(at)).toBeCloseTo(value, 9);
    }
    expect([0, -1].map(scale).some(Number.isFinite)).toBe(false);
  });

  it("without length: has all in the middle", () => {
    expect(scaleOf({ from: 3, to: 3 }, [0, 100])(3)).toBe(50);
  });

  it("has round numbers for its ticks", () => {
    expect(scaleOf({ from: 0, to: 9.7 }, [0, 1]).ticks(5)).toEqual([0, 2, 4, 6, 8]);
  });
});

describe("a path on its way", () => {
  it("begins where it was, is half way at a half, ends where it goes", () => {
    const at = between("M0,10L-4,2e1", "M2,20L4,40");
    expect([0, 0.5, 1].map(at)).toEqual(["M0,10L-4,20", "M1,15L0,30", "M2,20L4,40"]);
  });

  it("has what was not there before at once", () => {
    expect(between("M0,0", "M2,2L8,9")(0.5)).toBe("M1,1L8,9");
  });
});
