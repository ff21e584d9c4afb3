import { OutOfRangeError } from "./errors.ts";

/** Residuals of a set of parameters, one a reading. */
export type Residuals = (parameters: readonly number[]) => ArrayLike<number>;
/** Their derivatives by each parameter, one row a reading. */
export type Jacobian = (parameters: readonly number[]) => readonly ArrayLike<number>[];

/** Step of a fourth-order first difference where rounding (ε/h) and truncation (h⁴) are alike. */
const STEP = Number.EPSILON ** (1 / 5);

/**
 * First derivatives of a list of smooth functions, numerically.
 *
 *     f′ ≈ [8 f(x + h) − 8 f(x − h) − f(x + 2h) + f(x − 2h)]/(12h)
 *
 * @param residuals - the functions, finite at steps of 0.0015 of each parameter's size [any unit]
 * @param start - parameters whose size sets the least steps [unit of each parameter]
 * @param sizes - typical size of each parameter, |start| (1 at 0) unless given [unit of each parameter]
 * @returns function that gives the derivatives at any parameters, to about 12 digits of the largest [any unit]
 * @throws {OutOfRangeError} on sizes of another number or not greater than 0
 *
 * Valid for functions smooth over the steps. Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 25.3.21
 */
export function createJacobian(
  residuals: Residuals,
  start: readonly number[],
  sizes?: readonly number[],
): (parameters: readonly number[]) => number[][] {
  if (sizes !== undefined && sizes.length !== start.length)
    throw new OutOfRangeError("number of sizes", sizes.length, `${start.length}, one for each parameter`);
  const least = start.map((x, j) => {
    const size = sizes?.[j] ?? (x === 0 ? 1 : Math.abs(x));
    if (!(size > 0)) throw new OutOfRangeError(`sizes[${j}]`, size, "greater than 0");
    return size;
  });
  return (x) => {
    const columns = x.map((_, j) => derivative(residuals, x, j, STEP * stepSize(x[j], least[j])));
    return Array.from(columns[0], (_, i) => columns.map((column) => column[i]));
  };
}

/** A parameter that has grown past its size takes its own; one that has shrunk by up to a thousandfold as well. */
function stepSize(x: number, size: number): number {
  return Math.max(Math.abs(x), size * LEAST_SHARE);
}

/** Steps never shrink below this share of what the size sets, so that a parameter may pass through 0. */
const LEAST_SHARE = 1e-3;

function derivative(residuals: Residuals, x: readonly number[], j: number, h: number): Float64Array {
  const at = (steps: number) => residuals(x.map((value, k) => (k === j ? value + steps * h : value)));
  const [plus, minus, plusTwo, minusTwo] = [at(1), at(-1), at(2), at(-2)];
  return Float64Array.from(
    { length: plus.length },
    (_, i) => (8 * (plus[i] - minus[i]) - (plusTwo[i] - minusTwo[i])) / (12 * h),
  );
}
