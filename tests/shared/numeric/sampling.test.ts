import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { normalQuantile } from "#shared/numeric/normalQuantile.ts";
import { createRandom } from "#shared/numeric/random.ts";
import { scrambledSobol, sobolBits } from "#shared/numeric/sobol.ts";

// Expected: scipy 1.17.1, qmc.Sobol(64, scramble=False, bits=32), points 1, 2, 3, 5, 100, 777, 1023; dimensions 1, 2, 3, 10, 40, 64.
const PLAIN = [
  [1, [0.5, 0.5, 0.5, 0.5, 0.5, 0.5]],
  [2, [0.75, 0.25, 0.25, 0.75, 0.25, 0.75]],
  [3, [0.25, 0.75, 0.75, 0.25, 0.75, 0.25]],
  [5, [0.875, 0.875, 0.125, 0.125, 0.375, 0.625]],
  [100, [0.4140625, 0.2578125, 0.7734375, 0.6953125, 0.1328125, 0.6484375]],
  [777, [0.6923828125, 0.9365234375, 0.1630859375, 0.3232421875, 0.3583984375, 0.4267578125]],
  [1023, [0.0009765625, 0.7529296875, 0.6123046875, 0.8505859375, 0.6982421875, 0.0400390625]],
] as const;
// Likewise point 54 321 in all 64 dimensions, times 2¹⁶.
const POINT_54321 = [
  38013, 38699, 48017, 12657, 26599, 37447, 44907, 29445, 62121, 32337, 5347, 16099, 40331, 58301, 43107,
  55413, 8375, 52471, 53837, 56631, 33183, 39989, 56527, 47271, 10663, 19277, 8687, 10989, 16443, 29001,
  53419, 16827, 60379, 32281, 5977, 31065, 35051, 58361, 32413, 39749, 13057, 38629, 23071, 9021, 3469, 5913,
  6017, 56397, 53027, 60935, 23857, 3247, 27939, 42723, 42377, 32731, 47987, 65099, 42037, 17045, 29039, 5107,
  51819, 33827,
];
const DIMENSIONS = 64;

describe("sobolBits, against another implementation of the same direction numbers", () => {
  const points = sobolBits(1024, DIMENSIONS);
  it.each(PLAIN)("point %i agrees to the last bit", (i, expected) => {
    const shown = [0, 1, 2, 9, 39, 63].map((j) => points[i * DIMENSIONS + j] / 2 ** 32);
    expect(shown).toEqual(expected);
  });

  it("point 54321 agrees in all 64 dimensions", () => {
    const late = sobolBits(54322, DIMENSIONS).slice(-DIMENSIONS);
    expect([...late].map((bits) => bits / 2 ** 16)).toEqual(POINT_54321);
  });
});

/** Cells of a 2^p × 2^q grid on dimensions a and b that the points occupy, as one number each. */
function cells(points: Float64Array, dimensions: number, [a, p]: number[], [b, q]: number[]): number[] {
  return Array.from({ length: points.length / dimensions }, (_, i) => {
    const column = Math.floor(points[i * dimensions + a] * 2 ** p);
    const row = Math.floor(points[i * dimensions + b] * 2 ** q);
    return column * 2 ** q + row;
  });
}

describe("scrambledSobol, by the properties of a digital net", () => {
  it.each([1, 2, 99])(
    "with seed %i puts one of 256 points into each of 256 strata, in each dimension",
    (seed) => {
      const points = scrambledSobol(256, DIMENSIONS, seed);
      for (let j = 0; j < DIMENSIONS; j += 1)
        expect(new Set(cells(points, DIMENSIONS, [j, 8], [0, 0])).size).toBe(256);
    },
  );

  it("puts one of 256 points into each cell of every 2^p × 2^(8 − p) grid of the first two dimensions", () => {
    // Exact: the first two Sobol dimensions are a (0, m, 2)-net in base 2, and nested scrambling keeps nets.
    const points = scrambledSobol(256, 2, 5);
    for (let p = 0; p <= 8; p += 1) expect(new Set(cells(points, 2, [0, p], [1, 8 - p])).size).toBe(256);
  });

  it("moves with the seed, and stays inside 0 to 1", () => {
    const points = scrambledSobol(512, 8, 3);
    expect(points).toEqual(scrambledSobol(512, 8, 3));
    expect(points).not.toEqual(scrambledSobol(512, 8, 4));
    expect(points.every((u) => u > 0 && u < 1)).toBe(true);
  });

  it("has every point uniform over the seeds: the first point's mean is ½", () => {
    const firsts = Array.from({ length: 4000 }, (_, seed) => scrambledSobol(1, 1, seed)[0]);
    const mean = firsts.reduce((sum, u) => sum + u, 0) / firsts.length;
    expect(Math.abs(mean - 1 / 2)).toBeLessThan(4 * Math.sqrt(1 / 12 / firsts.length));
  });

  it.each([
    [10, 65],
    [10, 0],
    [-1, 3],
    [1.5, 3],
    [Number.NaN, 3],
  ])("refuses %s points in %s dimensions", (count, dimensions) => {
    expect(() => scrambledSobol(count, dimensions, 1)).toThrow(OutOfRangeError);
  });
});

describe("scrambledSobol, on a smooth integral with a known value", () => {
  // Exact: ∏ⱼ (1 + (uⱼ − ½)/(j + 1)²) has the mean 1 over the unit cube.
  const product = (points: Float64Array, d: number) => {
    let sum = 0;
    for (let i = 0; i < points.length; i += d) {
      let value = 1;
      for (let j = 0; j < d; j += 1) value *= 1 + (points[i + j] - 1 / 2) / (j + 1) ** 2;
      sum += value;
    }
    return sum / (points.length / d);
  };
  const seeds = Array.from({ length: 12 }, (_, seed) => seed);
  const rms = (draw: (seed: number) => Float64Array, d: number) =>
    Math.sqrt(seeds.reduce((sum, seed) => sum + (product(draw(seed), d) - 1) ** 2, 0) / seeds.length);

  it("its error falls at least as count⁻¹, where plain sampling falls as count^−½", () => {
    const error = (count: number) => rms((seed) => scrambledSobol(count, 6, seed), 6);
    expect(Math.log2(error(64) / error(4096)) / 6).toBeGreaterThan(1);
  });

  it("lies far below that of plain random numbers", () => {
    const plain = rms((seed) => {
      const random = createRandom(seed);
      return Float64Array.from({ length: 2048 * 6 }, random.uniform);
    }, 6);
    expect(rms((seed) => scrambledSobol(2048, 6, seed), 6)).toBeLessThan(plain / 50);
  });
});

describe("normal quantiles of scrambledSobol, in 24 dimensions", () => {
  const [count, d] = [2048, 24];
  const z = scrambledSobol(count, d, 1).map(normalQuantile);
  const mean = (f: (row: number) => number) =>
    Array.from({ length: count }, (_, i) => f(i * d)).reduce((sum, v) => sum + v, 0) / count;

  it("has means 0 and variances 1", () => {
    for (let j = 0; j < d; j += 1) {
      expect(Math.abs(mean((row) => z[row + j]))).toBeLessThan(2e-3);
      expect(Math.abs(mean((row) => z[row + j] ** 2) - 1)).toBeLessThan(1e-2);
    }
  });

  it("has no correlation between any two dimensions", () => {
    // Plain random numbers would show up to about 4/√2048 = 0.09 among these 276 pairs.
    for (let j = 0; j < d; j += 1)
      for (let k = 0; k < j; k += 1)
        expect(Math.abs(mean((row) => z[row + j] * z[row + k]))).toBeLessThan(0.05);
  });
});
