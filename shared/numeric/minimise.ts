import { NoConvergenceError, OutOfRangeError, requireFinite } from "./errors.ts";

export interface MinimiseOptions {
  /** first step of each variable, a tenth of its start (or 0.1 at 0) unless given [unit of each] */
  readonly steps?: readonly number[];
  /** last size of the simplex against each variable's own size (its start plus its step) [-] */
  readonly tolerance?: number;
  readonly maxIterations?: number;
}

export interface Minimum {
  readonly x: readonly number[];
  readonly value: number;
  readonly converged: boolean;
  readonly iterations: number;
}

interface Vertex {
  readonly x: readonly number[];
  readonly value: number;
}

type Objective = (x: readonly number[]) => number;

const DEFAULT_TOLERANCE = 1e-9;
const DEFAULT_MAX_ITERATIONS = 5000;
const DEFAULT_STEP = 0.1;
/** Fresh simplexes that must not find anything lower before an end is believed. */
const MAX_RESTARTS = 20;
/** Gain over a restart, against the value's own size, that counts as rounding. */
const ROUNDING = 1e-13;

/**
 * A local minimum of a smooth function of a few variables, without derivatives.
 *
 *     Nelder–Mead, started afresh from its own answer until nothing lower is found
 *
 * @param f - function; Infinity marks what is not admissible [any unit]
 * @param start - admissible start [unit of each variable]
 * @param options - first steps [unit of each variable], tolerance 1e-9 [-], most iterations 5000 [-]
 * @returns the place [unit of each variable], the value there [unit of f], whether it converged, the iterations [-]
 * @throws {OutOfRangeError} on a start that is not finite or not admissible, steps of another number or 0
 * @throws {NoConvergenceError} where f is NaN
 *
 * Valid up to about ten variables. A smooth minimum is flat, so the place comes to about 8 digits, the value to about 15.
 * Source: Nelder & Mead, Computer Journal 7 (1965) 308–313; parameters by Gao & Han, Comput. Optim. Appl. 51 (2012) 259–277
 */
export function minimise(f: Objective, start: readonly number[], options: MinimiseOptions = {}): Minimum {
  const maxIterations = options.maxIterations ?? DEFAULT_MAX_ITERATIONS;
  const steps = checkedSteps(start, options.steps);
  const sizes = steps.map((step, j) => Math.abs(step) + Math.abs(start[j]));
  const limits = sizes.map((size) => size * (options.tolerance ?? DEFAULT_TOLERANCE));
  let best = vertexAt(f, start, 0);
  if (!Number.isFinite(best.value)) throw new OutOfRangeError("f(start)", best.value, "finite");
  let iterations = 0;
  let scale = 1;
  for (let restart = 0; restart <= MAX_RESTARTS; restart += 1) {
    const simplex = simplexAround(f, best, steps, scale, iterations);
    while (!isSmall(simplex, limits) && iterations < maxIterations) {
      improve(f, simplex, iterations);
      iterations += 1;
    }
    const gain = best.value - simplex[0].value;
    best = simplex[0];
    if (iterations >= maxIterations) break;
    if (restart > 0 && gain <= ROUNDING * Math.abs(best.value))
      return { ...best, converged: true, iterations };
    scale = -scale / 2;
  }
  return { ...best, converged: false, iterations };
}

function checkedSteps(start: readonly number[], steps: readonly number[] | undefined): number[] {
  if (start.length === 0) throw new OutOfRangeError("number of variables", 0, "one or more");
  if (steps !== undefined && steps.length !== start.length)
    throw new OutOfRangeError("number of steps", steps.length, `${start.length}, one for each variable`);
  return start.map((x, j) => {
    requireFinite(`start[${j}]`, x);
    const step = requireFinite(`steps[${j}]`, steps?.[j] ?? (x === 0 ? DEFAULT_STEP : DEFAULT_STEP * x));
    if (step === 0) throw new OutOfRangeError(`steps[${j}]`, step, "not 0");
    return step;
  });
}

function vertexAt(f: Objective, x: readonly number[], iterations: number): Vertex {
  const value = f(x);
  if (Number.isNaN(value)) throw new NoConvergenceError(`the function is not a number at ${x}`, iterations);
  return { x, value };
}

function simplexAround(
  f: Objective,
  from: Vertex,
  steps: readonly number[],
  scale: number,
  iterations: number,
) {
  const others = steps.map((step, j) => {
    const moved = from.x.map((x, k) => (k === j ? x + step * scale : x));
    return vertexAt(f, moved, iterations);
  });
  return byValue([from, ...others]);
}

function byValue(simplex: Vertex[]): Vertex[] {
  return simplex.sort((a, b) => a.value - b.value);
}

function isSmall(simplex: readonly Vertex[], limits: readonly number[]): boolean {
  return simplex.every(({ x }) => x.every((value, j) => Math.abs(value - simplex[0].x[j]) <= limits[j]));
}

/** One Nelder–Mead step: reflect, expand, contract or shrink. Keeps the simplex sorted. */
function improve(f: Objective, simplex: Vertex[], iterations: number): void {
  const n = simplex.length - 1;
  const [best, nextWorst, worst] = [simplex[0], simplex[n - 1], simplex[n]];
  const centre = best.x.map((_, j) => simplex.slice(0, n).reduce((sum, v) => sum + v.x[j], 0) / n);
  const along = (share: number) =>
    vertexAt(
      f,
      centre.map((c, j) => c + share * (c - worst.x[j])),
      iterations,
    );
  const reflected = along(1);
  if (reflected.value < best.value) {
    const expanded = along(1 + 2 / Math.max(2, n));
    simplex[n] = expanded.value < reflected.value ? expanded : reflected;
  } else if (reflected.value < nextWorst.value) simplex[n] = reflected;
  else {
    const share = 3 / 4 - 1 / (2 * Math.max(2, n));
    const contracted = along(reflected.value < worst.value ? share : -share);
    if (contracted.value < Math.min(reflected.value, worst.value)) simplex[n] = contracted;
    else shrink(f, simplex, iterations);
  }
  byValue(simplex);
}

function shrink(f: Objective, simplex: Vertex[], iterations: number): void {
  const n = simplex.length - 1;
  const share = 1 - 1 / Math.max(2, n);
  const [best] = simplex;
  for (let i = 1; i <= n; i += 1) {
    const moved = simplex[i].x.map((x, j) => best.x[j] + share * (x - best.x[j]));
    simplex[i] = vertexAt(f, moved, iterations);
  }
}
