import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { createRandom, randomFrom } from "#shared/numeric/random.ts";

describe("xoshiro128**, against its reference code", () => {
  it("from the state 1, 2, 3, 4 gives the reference's first ten numbers", () => {
    // Computed from Blackman & Vigna's public-domain C code (xoshiro128** 1.1), transcribed to arbitrary-size integers.
    const reference = [
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ];
    const random = randomFrom([1, 2, 3, 4]);
    expect(reference.map(() => random.bits())).toEqual(reference);
  });
});

describe("createRandom, on seeds", () => {
  it("repeats itself for one seed and differs for the next", () => {
    const draw = (seed: number) => Array.from({ length: 4 }, createRandom(seed).bits);
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
    expect(draw(0).every((x) => x === 0)).toBe(false);
  });

  it("is uniform in mean and variance", () => {
    const random = createRandom(20);
    const draws = Array.from({ length: 40_000 }, random.uniform);
    const mean = draws.reduce((sum, u) => sum + u, 0) / draws.length;
    const variance = draws.reduce((sum, u) => sum + (u - mean) ** 2, 0) / draws.length;
    // Four standard errors: √(1/12/n) of the mean, √(1/180/n) of the variance.
    expect(Math.abs(mean - 1 / 2)).toBeLessThan(4 * Math.sqrt(1 / 12 / draws.length));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / draws.length));
    expect(Math.min(...draws)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...draws)).toBeLessThan(1);
  });

  it.each([-1, 0.5, 2 ** 32, Number.NaN])("refuses the seed %s", (seed) => {
    expect(() => createRandom(seed)).toThrow(OutOfRangeError);
  });
});
