import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NotEnoughDataError, OutOfRangeError } from "#shared/numeric/errors.ts";
import { createJacobian } from "#shared/numeric/jacobian.ts";
import { fitLinear } from "#shared/numeric/leastSquares.ts";
import { fitNonlinear } from "#shared/numeric/levenbergMarquardt.ts";

const places = [0, 1, 2, 3, 4, 5, 6, 7];
/** Residuals of y = a·e^(−bx) against given readings. */
const decay = (readings: readonly number[]) => (b: readonly number[]) =>
  places.map((x, i) => b[0] * Math.exp(-b[1] * x) - readings[i]);

describe("fitNonlinear, against what is known exactly", () => {
  it("agrees with the linear fit where the model is linear, doubt included", () => {
    const response = [1, 3, 2, 5, 4, 7, 6, 8.5];
    const line = fitLinear({ design: places.map((x) => [1, x]), response });
    const fit = fitNonlinear({
      residuals: ([a, b]) => places.map((x, i) => a + b * x - response[i]),
      start: [0, 0],
    });
    expect(fit.converged).toBe(true);
    fit.coefficients.forEach((value, j) => {
      expect(value).toBeCloseToRelative(line.coefficients[j], 1e-12);
      expect(fit.standardErrors?.[j]).toBeCloseToRelative(line.standardErrors?.[j] ?? Number.NaN, 1e-10);
    });
    expect(fit.covariance?.[0][1]).toBeCloseToRelative(line.covariance?.[0][1] ?? Number.NaN, 1e-10);
    expect(fit.residualSd).toBeCloseToRelative(line.residualSd, 1e-12);
    expect(fit.conditionNumber).toBeCloseToRelative(line.conditionNumber, 1e-6);
  });

  it("gives back the parameters of readings without scatter, whatever their units", () => {
    const positive = fc.double({ min: 0.2, max: 3, noNaN: true });
    fc.assert(
      fc.property(positive, positive, fc.constantFrom(1e-9, 1, 1e9), (a, b, unit) => {
        const readings = places.map((x) => a * unit * Math.exp(-b * x));
        const fit = fitNonlinear({ residuals: decay(readings), start: [unit, 1] });
        expect(fit.converged).toBe(true);
        expect(fit.coefficients[0]).toBeCloseToRelative(a * unit, 1e-10);
        expect(fit.coefficients[1]).toBeCloseToRelative(b, 1e-10);
      }),
      { numRuns: 60 },
    );
  });

  it("takes derivatives that it is given", () => {
    const readings = [5.1, 3.2, 1.7, 1.2, 0.6, 0.5, 0.2, 0.2];
    const jacobian = ([a, b]: readonly number[]) =>
      places.map((x) => [Math.exp(-b * x), -a * x * Math.exp(-b * x)]);
    const own = fitNonlinear({ residuals: decay(readings), jacobian, start: [1, 1] });
    const numerical = fitNonlinear({ residuals: decay(readings), start: [1, 1] });
    own.coefficients.forEach((value, j) => {
      expect(numerical.coefficients[j]).toBeCloseToRelative(value, 1e-10);
    });
    // At a minimum the residuals stand at right angles to every derivative.
    for (const j of [0, 1]) {
      const slopes = jacobian(own.coefficients).map((row) => row[j]);
      const product = slopes.reduce((sum, slope, i) => sum + slope * own.residuals[i], 0);
      expect(Math.abs(product)).toBeLessThan(1e-12 * Math.hypot(...slopes) * Math.sqrt(own.rss));
    }
  });

  it("shortens steps that leave the place where the model exists", () => {
    const readings = places.map((x) => Math.log(0.05 + x));
    const fit = fitNonlinear({
      residuals: ([a]) => places.map((x, i) => Math.log(a + x) - readings[i]),
      start: [6],
    });
    expect(fit.converged).toBe(true);
    expect(fit.coefficients[0]).toBeCloseToRelative(0.05, 1e-10);
  });
});

describe("fitNonlinear, on what it can't answer", () => {
  const readings = [5.1, 3.2, 1.7, 1.2, 0.6, 0.5, 0.2, 0.2];

  it("leaves the doubt out where no degree of freedom is left", () => {
    const fit = fitNonlinear({ residuals: ([a, b]) => [a - 2, a * b - 6], start: [1, 1] });
    expect(fit.coefficients[0]).toBeCloseToRelative(2, 1e-12);
    expect(fit.coefficients[1]).toBeCloseToRelative(3, 1e-12);
    expect(fit).toMatchObject({
      dof: 0,
      residualSd: 0,
      standardErrors: null,
      covariance: null,
      converged: true,
    });
  });

  it("says that it has not converged when the steps are used up", () => {
    const fit = fitNonlinear({ residuals: decay(readings), start: [40, 4] }, { maxIterations: 2 });
    expect(fit.converged).toBe(false);
    expect(fit.iterations).toBe(2);
  });

  it("asks for more readings than parameters, and for parameters that can be told apart", () => {
    expect(() => fitNonlinear({ residuals: ([a, b]) => [a + b], start: [1, 1] })).toThrow(NotEnoughDataError);
    expect(() => fitNonlinear({ residuals: ([a, b]) => [a + b - 1, 2 * (a + b), 5], start: [1, 1] })).toThrow(
      /told apart/,
    );
  });

  it("refuses a start without parameters, or with residuals that are not finite", () => {
    expect(() => fitNonlinear({ residuals: () => [1], start: [] })).toThrow(OutOfRangeError);
    expect(() => fitNonlinear({ residuals: ([a]) => [Math.log(a), 1], start: [-1] })).toThrow(
      OutOfRangeError,
    );
  });
});

describe("createJacobian, against derivatives by hand", () => {
  it("of eˣy and y³, to 11 digits", () => {
    const jacobian = createJacobian(([x, y]) => [Math.exp(x) * y, y ** 3], [1, 1]);
    const [[ax, ay], [bx, by]] = jacobian([0.5, 2]);
    expect(ax).toBeCloseToRelative(2 * Math.exp(0.5), 1e-11);
    expect(ay).toBeCloseToRelative(Math.exp(0.5), 1e-11);
    expect(bx).toBe(0);
    expect(by).toBeCloseToRelative(12, 1e-11);
  });

  it("at a parameter that is 0 steps by its size", () => {
    const [[slope]] = createJacobian(([x]) => [Math.sin(x / 1e-6)], [0], [1e-4])([0]);
    expect(slope).toBeCloseToRelative(1e6, 1e-10);
  });

  it("refuses sizes that are none", () => {
    expect(() => createJacobian(() => [1], [1], [0])).toThrow(OutOfRangeError);
    expect(() => createJacobian(() => [1], [1], [Number.NaN])).toThrow(OutOfRangeError);
    expect(() => createJacobian(() => [1], [1], [1, 1])).toThrow(OutOfRangeError);
  });
});
