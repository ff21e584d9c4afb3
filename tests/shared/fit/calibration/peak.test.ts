import { describe, expect, it } from "vitest";
import { type LogDensity, peakOf } from "#shared/fit/calibration/peak.ts";

/** Student's t with ten degrees of freedom: beyond √10 of its middle it curves up, and a Newton step leads away from the peak. */
const student = (x: number) => -5.5 * Math.log(1 + x ** 2 / 10);
/** −∂² of it in the middle. */
const CURVATURE = 11 / 10;

function counted(f: LogDensity) {
  let asked = 0;
  const counting: LogDensity = (x) => {
    asked += 1;
    return f(x);
  };
  return { counting, asked: () => asked };
}

describe("the peak of a density", () => {
  it("from where it curves up, one variable: found by damped steps, without a simplex", () => {
    const { counting, asked } = counted(([x]) => student(x - 0.3));
    const { mode, spread, value } = peakOf(counting, [6.3], [1]);
    expect(Math.abs(mode[0] - 0.3)).toBeLessThan(0.1);
    expect(spread[0][0]).toBeCloseToRelative(1 / Math.sqrt(CURVATURE), 0.01);
    expect(value).toBeCloseTo(0, 2);
    expect(asked()).toBeLessThan(40);
  });

  it("from where it curves up in one direction of three: found by them as well", () => {
    const { counting, asked } = counted(([x, y, z]) => student(x) - (y - x) ** 2 / 2 - 2 * z ** 2);
    const { mode } = peakOf(counting, [7, 1, -1], [1, 1, 1]);
    for (const each of mode) expect(Math.abs(each)).toBeLessThan(0.2);
    expect(asked()).toBeLessThan(250);
  });

  it("of a density that falls like a roof: the simplex finds it, as wide as was said", () => {
    const { mode, spread } = peakOf(([x]) => -Math.abs(x - 1), [3], [0.7]);
    expect(mode[0]).toBeCloseTo(1, 4);
    expect(spread[0][0]).toBeGreaterThan(0);
  });

  it("without a density at the start: refused", () => {
    expect(() => peakOf(() => Number.NEGATIVE_INFINITY, [0], [1])).toThrow(/finite/);
  });
});
