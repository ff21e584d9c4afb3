import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cosineOfDegrees, sineOfDegrees } from "#shared/physics/hold/angle.ts";

describe("sine and cosine of degrees", () => {
  it.each([
    [0, 0, 1],
    [30, 0.5, Math.sqrt(3) / 2],
    [60, Math.sqrt(3) / 2, 0.5],
    [90, 1, 0],
    [120, Math.sqrt(3) / 2, -0.5],
    [150, 0.5, -Math.sqrt(3) / 2],
    [180, 0, -1],
    [210, -0.5, -Math.sqrt(3) / 2],
    [270, -1, 0],
    [360, 0, 1],
    [-30, -0.5, Math.sqrt(3) / 2],
    [-90, -1, 0],
    [-150, -0.5, -Math.sqrt(3) / 2],
  ])("at %s° are exactly %s and %s", (degrees, sine, cosine) => {
    expect(sineOfDegrees(degrees)).toBe(sine);
    expect(cosineOfDegrees(degrees)).toBe(cosine);
  });

  it("elsewhere are those of the angle in radians", () => {
    fc.assert(
      fc.property(fc.double({ min: -720, max: 720, noNaN: true }), (degrees) => {
        expect(Math.abs(sineOfDegrees(degrees) - Math.sin((degrees * Math.PI) / 180))).toBeLessThan(4e-15);
        expect(Math.abs(cosineOfDegrees(degrees) - Math.cos((degrees * Math.PI) / 180))).toBeLessThan(4e-15);
      }),
    );
  });
});
