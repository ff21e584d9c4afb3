import { describe, expect, it } from "vitest";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { fourier } from "#shared/numeric/fourier.ts";
import { normals } from "#tests/support/normals.ts";

const list = (values: readonly number[]) => Float64Array.from(values);

describe("fourier", () => {
  it("is the sum that defines it, of random numbers, to 12 digits", () => {
    const count = 64;
    const normal = normals(3);
    const [a, b] = [0, 1].map(() => list(Array.from({ length: count }, normal)));
    const [re, im] = [a.slice(), b.slice()];
    fourier(re, im);
    for (let k = 0; k < count; k++) {
      let [x, y] = [0, 0];
      for (let n = 0; n < count; n++) {
        const angle = (-2 * Math.PI * k * n) / count;
        x += a[n] * Math.cos(angle) - b[n] * Math.sin(angle);
        y += a[n] * Math.sin(angle) + b[n] * Math.cos(angle);
      }
      expect(re[k]).toBeCloseTo(x, 11);
      expect(im[k]).toBeCloseTo(y, 11);
    }
  });

  it("keeps the energy (Parseval)", () => {
    const normal = normals(5);
    const re = list(Array.from({ length: 1024 }, normal));
    const im = new Float64Array(1024);
    const before = re.reduce((sum, each) => sum + each ** 2, 0);
    fourier(re, im);
    const after = re.reduce((sum, each, k) => sum + each ** 2 + im[k] ** 2, 0) / 1024;
    expect(after).toBeCloseToRelative(before, 1e-12);
  });

  it.each([0, 1, 3, 1000])("refuses %s samples", (count) => {
    expect(() => fourier(new Float64Array(count), new Float64Array(count))).toThrow(OutOfRangeError);
  });

  it("refuses as many imaginary parts too few", () => {
    expect(() => fourier(new Float64Array(8), new Float64Array(4))).toThrow(OutOfRangeError);
  });
});
