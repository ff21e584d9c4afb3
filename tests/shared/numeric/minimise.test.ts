import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NoConvergenceError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { hessian } from "#shared/numeric/hessian.ts";
import { minimise } from "#shared/numeric/minimise.ts";
import { minimiseScalar } from "#shared/numeric/minimiseScalar.ts";

const { NaN: notANumber, POSITIVE_INFINITY: infinity } = Number;

// Test functions of Moré, Garbow & Hillstrom, ACM Trans. Math. Softw. 7 (1981) 17–41, from memory: starts, least value 0, its place.
const rosenbrock = ([x, y]: readonly number[]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2;
const helicalValley = ([x, y, z]: readonly number[]) => {
  const turn = Math.atan2(y, x) / (2 * Math.PI);
  const theta = turn < -1 / 4 ? turn + 1 : turn;
  return 100 * ((z - 10 * theta) ** 2 + (Math.hypot(x, y) - 1) ** 2) + z * z;
};
const powellSingular = ([a, b, c, d]: readonly number[]) =>
  (a + 10 * b) ** 2 + 5 * (c - d) ** 2 + (b - 2 * c) ** 4 + 10 * (a - d) ** 4;
const wood = ([a, b, c, d]: readonly number[]) =>
  100 * (b - a * a) ** 2 +
  (1 - a) ** 2 +
  90 * (d - c * c) ** 2 +
  (1 - c) ** 2 +
  10 * (b + d - 2) ** 2 +
  (b - d) ** 2 / 10;

describe("minimise, on published hard functions", () => {
  it.each([
    ["Rosenbrock's", rosenbrock, [-1.2, 1], [1, 1], 1e-7],
    ["the helical valley", helicalValley, [-1, 0, 0], [1, 0, 0], 1e-7],
    ["Wood's", wood, [-3, -1, -3, -1], [1, 1, 1, 1], 1e-7],
    ["Powell's singular", powellSingular, [3, -1, 0, 1], [0, 0, 0, 0], 1e-3],
  ] as const)("reaches the minimum of %s from the standard start", (_, f, start, place, tolerance) => {
    const { x, value, converged } = minimise(f, start);
    expect(converged).toBe(true);
    expect(value).toBeLessThan(1e-12);
    x.forEach((v, j) => {
      expect(Math.abs(v - place[j])).toBeLessThan(tolerance);
    });
  });

  it("finds the middle of any well-conditioned bowl, whatever the units", () => {
    const number = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(number, number, fc.constantFrom(1e-6, 1, 1e6), (a, b, unit) => {
        const bowl = ([x, y]: readonly number[]) =>
          (x / unit - a) ** 2 + 3 * (y - b) ** 2 + (x / unit - a) * (y - b);
        const { x } = minimise(bowl, [unit, 1], { steps: [unit, 1] });
        expect(Math.abs(x[0] / unit - a)).toBeLessThan(1e-7);
        expect(Math.abs(x[1] - b)).toBeLessThan(1e-7);
      }),
      { numRuns: 40 },
    );
  });

  it("serves a single variable, and one that starts at 0", () => {
    expect(minimise(([x]) => (x - 2) ** 2, [0]).x[0]).toBeCloseTo(2, 7);
  });

  it("keeps out of what is marked by Infinity", () => {
    const { x } = minimise(([s]) => (s > 0 ? s - Math.log(s) : infinity), [5]);
    expect(x[0]).toBeCloseTo(1, 7);
  });
});

describe("minimise, on what it can't do", () => {
  it("says that it has not converged", () => {
    const short = minimise(rosenbrock, [-1.2, 1], { maxIterations: 10 });
    expect(short.converged).toBe(false);
    expect(short.iterations).toBe(10);
    expect(short.value).toBeLessThan(rosenbrock([-1.2, 1]));
  });

  it("refuses starts and steps that are none, and stops on NaN", () => {
    expect(() => minimise(rosenbrock, [])).toThrow(OutOfRangeError);
    expect(() => minimise(rosenbrock, [notANumber, 1])).toThrow(OutOfRangeError);
    expect(() => minimise(() => infinity, [1])).toThrow(OutOfRangeError);
    expect(() => minimise(rosenbrock, [1, 2], { steps: [1] })).toThrow(OutOfRangeError);
    expect(() => minimise(rosenbrock, [1, 2], { steps: [1, 0] })).toThrow(OutOfRangeError);
    expect(() => minimise(([x]) => Math.sqrt(x), [0.01], { steps: [-1] })).toThrow(NoConvergenceError);
  });
});

describe("minimiseScalar, on valleys with a known floor", () => {
  it.each([
    ["a parabola", (x: number) => (x - 0.3) ** 2, -1, 4, 0.3],
    ["x − ln x", (x: number) => x - Math.log(x), 1e-3, 50, 1],
    ["a flat quartic", (x: number) => (x - 2) ** 4 + 1, 0, 9, 2],
    ["a kink", (x: number) => Math.abs(x + 0.7), -5, 1, -0.7],
    ["cos", Math.cos, 0, 6, Math.PI],
  ] as const)("%s", (name, f, lo, hi, place) => {
    const { x, value, converged, iterations } = minimiseScalar(f, lo, hi);
    expect(converged).toBe(true);
    expect(Math.abs(x - place)).toBeLessThan(name === "a flat quartic" ? 2e-3 : 1e-7);
    expect(value).toBe(f(x));
    expect(iterations).toBeLessThan(80);
  });

  it("takes few evaluations on a smooth valley", () => {
    expect(minimiseScalar((x) => x - Math.log(x), 0.1, 10).iterations).toBeLessThan(20);
  });

  it("approaches an end that is lowest", () => {
    expect(minimiseScalar((x) => x, 1, 3).x).toBeCloseTo(1, 6);
    expect(minimiseScalar((x) => -x, 1, 3).x).toBeCloseTo(3, 6);
  });

  it("says so when the evaluations are used up, and refuses no interval and NaN", () => {
    expect(minimiseScalar(Math.cos, 0, 6, { maxIterations: 3 }).converged).toBe(false);
    expect(() => minimiseScalar(Math.cos, 1, 1)).toThrow(OutOfRangeError);
    expect(() => minimiseScalar(Math.cos, notANumber, 1)).toThrow(OutOfRangeError);
    expect(() => minimiseScalar(Math.sqrt, -3, -1)).toThrow(NoConvergenceError);
  });
});

describe("hessian, against derivatives by hand", () => {
  it("of x³y + eʸ", () => {
    const [[xx, xy], [yx, yy]] = hessian(([x, y]) => x ** 3 * y + Math.exp(y), [1.5, 0.7]);
    expect(xx).toBeCloseToRelative(6 * 1.5 * 0.7, 1e-8);
    expect(xy).toBeCloseToRelative(3 * 1.5 ** 2, 1e-8);
    expect(yx).toBe(xy);
    expect(yy).toBeCloseToRelative(Math.exp(0.7), 1e-8);
  });

  it("takes the sizes it is given, for a variable at 0", () => {
    const [[curvature]] = hessian(([x]) => Math.cosh(x / 1e-6), [0], [1e-6]);
    expect(curvature).toBeCloseToRelative(1e12, 1e-8);
  });

  it("refuses a second difference that is not finite", () => {
    expect(() => hessian(([x]) => Math.log(x), [0])).toThrow(OutOfRangeError);
  });
});
