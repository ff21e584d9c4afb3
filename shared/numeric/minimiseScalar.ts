import { NoConvergenceError, OutOfRangeError, requireFinite } from "./errors.ts";

export interface ScalarMinimum {
  readonly x: number;
  readonly value: number;
  readonly converged: boolean;
  readonly iterations: number;
}

/** Share of the larger part that a golden-section step goes. */
const GOLDEN = (3 - Math.sqrt(5)) / 2;
/** Below the root of the rounding unit a smooth minimum shows no difference. */
const DEFAULT_TOLERANCE = Math.sqrt(Number.EPSILON);
const DEFAULT_MAX_ITERATIONS = 200;
/** Smallest step at a minimum at 0, against the first interval. */
const FLOOR_SHARE = 1e-12;

/**
 * The minimum of a function of one variable between two ends.
 *
 *     parabola through the three lowest places where it can be trusted, golden section elsewhere
 *
 * @param f - function [any unit]
 * @param lo - lower end [unit of x]
 * @param hi - upper end, above lo [unit of x]
 * @param options - tolerance relative to the place, 1.5e-8 unless given; most evaluations, 200 unless given [-]
 * @returns the place [unit of x], the value there [unit of f], whether it converged, the evaluations [-]
 * @throws {OutOfRangeError} on ends that are no interval
 * @throws {NoConvergenceError} where f is NaN
 *
 * Valid for one valley; with several, one of them. An end that is lowest is approached, not reached.
 * Source: Brent, Algorithms for Minimization without Derivatives (1973), chapter 5, localmin
 */
export function minimiseScalar(
  f: (x: number) => number,
  lo: number,
  hi: number,
  options: { readonly tolerance?: number; readonly maxIterations?: number } = {},
): ScalarMinimum {
  requireFinite("lo", lo);
  if (!(hi > lo && hi < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError("hi", hi, `finite, greater than ${lo}`);
  const { tolerance = DEFAULT_TOLERANCE, maxIterations = DEFAULT_MAX_ITERATIONS } = options;
  const floor = FLOOR_SHARE * (hi - lo);
  const valley = new Valley(lo, hi, f);
  for (let iterations = 1; iterations <= maxIterations; iterations += 1) {
    const smallest = tolerance * Math.abs(valley.x) + floor;
    if (valley.isWithin(2 * smallest)) return { x: valley.x, value: valley.fx, converged: true, iterations };
    valley.advance(smallest);
  }
  return { x: valley.x, value: valley.fx, converged: false, iterations: maxIterations };
}

/** Brent's bracket a…b with its three lowest places: x lowest, w next, v the w before. */
class Valley {
  x: number;
  fx: number;
  private w: number;
  private fw: number;
  private v: number;
  private fv: number;
  private step = 0;
  private stepBefore = 0;

  constructor(
    private a: number,
    private b: number,
    private readonly f: (x: number) => number,
  ) {
    this.x = a + GOLDEN * (b - a);
    this.w = this.x;
    this.v = this.x;
    this.fx = this.evaluate(this.x);
    this.fw = this.fx;
    this.fv = this.fx;
  }

  isWithin(width: number): boolean {
    return Math.abs(this.x - (this.a + this.b) / 2) <= width - (this.b - this.a) / 2;
  }

  advance(smallest: number): void {
    const parabolic = this.parabolicStep(smallest);
    if (parabolic === null) {
      this.stepBefore = this.x < (this.a + this.b) / 2 ? this.b - this.x : this.a - this.x;
      this.step = GOLDEN * this.stepBefore;
    } else {
      this.stepBefore = this.step;
      this.step = parabolic;
    }
    const u = this.x + (Math.abs(this.step) >= smallest ? this.step : Math.sign(this.step) * smallest);
    this.take(u, this.evaluate(u));
  }

  private evaluate(x: number): number {
    const value = this.f(x);
    if (Number.isNaN(value)) throw new NoConvergenceError(`the function is not a number at ${x}`, 0);
    return value;
  }

  /** Step to the parabola's lowest place, or null where it leaves the bracket or does not shrink the steps. */
  private parabolicStep(smallest: number): number | null {
    if (Math.abs(this.stepBefore) <= smallest) return null;
    const r = (this.x - this.w) * (this.fx - this.fv);
    const q = (this.x - this.v) * (this.fx - this.fw);
    const step = -((this.x - this.v) * q - (this.x - this.w) * r) / (2 * (q - r));
    const inside = this.x + step > this.a && this.x + step < this.b;
    if (!(inside && Math.abs(step) < Math.abs(this.stepBefore) / 2)) return null;
    const u = this.x + step;
    const nearEnd = u - this.a < 2 * smallest || this.b - u < 2 * smallest;
    return nearEnd ? Math.sign((this.a + this.b) / 2 - this.x) * smallest : step;
  }

  private take(u: number, fu: number): void {
    const lower = fu <= this.fx;
    if (lower === u < this.x) this.b = lower ? this.x : u;
    else this.a = lower ? this.x : u;
    if (lower) {
      [this.v, this.fv, this.w, this.fw] = [this.w, this.fw, this.x, this.fx];
      [this.x, this.fx] = [u, fu];
    } else if (fu <= this.fw || this.w === this.x) {
      [this.v, this.fv, this.w, this.fw] = [this.w, this.fw, u, fu];
    } else if (fu <= this.fv || this.v === this.x || this.v === this.w) [this.v, this.fv] = [u, fu];
  }
}
