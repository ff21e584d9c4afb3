import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Gravity, restOf, tiltBetween, tiltOf } from "#shared/fit/tilt.ts";
import { NotEnoughDataError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { normals } from "#tests/support/normals.ts";

const G = 9.81;
const DEGREE = Math.PI / 180;
const about = ([x, y, z]: Gravity, angle: number): Gravity => [
  x,
  y * Math.cos(angle) - z * Math.sin(angle),
  y * Math.sin(angle) + z * Math.cos(angle),
];

describe("tiltBetween", () => {
  it.each([0, 0.01, 1, 33.7, 90, 153, 180])("of %s° about an axis of the board is that angle", (degrees) => {
    expect(tiltBetween([0, 0, G], about([0, 0, G], degrees * DEGREE))).toBeCloseTo(degrees * DEGREE, 12);
  });

  it("is the same whichever way the phone lies on the board", () => {
    const angle = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(angle, angle, fc.double({ min: 0, max: 3.1, noNaN: true }), (a, b, tilt) => {
        const turned = ([x, y, z]: Gravity): Gravity => {
          const [p, q, r] = about([x, y, z], a);
          return [p * Math.cos(b) - q * Math.sin(b), p * Math.sin(b) + q * Math.cos(b), r];
        };
        expect(tiltBetween(turned([0, 0, G]), turned(about([0, 0, G], tilt)))).toBeCloseTo(tilt, 9);
      }),
    );
  });

  it("refuses what is no direction", () => {
    expect(() => tiltBetween([0, 0, 0], [0, 0, G])).toThrow(OutOfRangeError);
    expect(() => tiltBetween([0, 0, G], [Number.NaN, 0, G])).toThrow(OutOfRangeError);
  });
});

describe("restOf and tiltOf", () => {
  const shaking = (tilt: number, seed: number) => {
    const normal = normals(seed);
    const gravity = about([0, 0, G], tilt);
    return restOf(
      Array.from({ length: 30 }, () => gravity.map((each) => each + 0.02 * normal()) as unknown as Gravity),
    );
  };

  it("of shaken readings: gives the tilt within three standard uncertainties", () => {
    const { tilt, uncertainty } = tiltOf(shaking(0, 1), shaking(33 * DEGREE, 2));
    expect(Math.abs(tilt - 33 * DEGREE)).toBeLessThan(3 * uncertainty);
    expect(uncertainty).toBeGreaterThan(0.3 * DEGREE);
  });

  it("says how much the direction scatters: noise across gravity over gravity", () => {
    // two axes across, each 0.02 m/s²
    expect(shaking(0, 3).scatter).toBeCloseToRelative((Math.SQRT2 * 0.02) / G, 0.3);
  });

  it("refuses a single reading", () => {
    expect(() => restOf([[0, 0, G]])).toThrow(NotEnoughDataError);
  });
});
