import {
  NotEnoughDataError,
  OutOfRangeError,
  requireNonNegative,
  requirePositive,
} from "../numeric/errors.ts";
import { fitLinear, type LinearFit } from "../numeric/leastSquares.ts";
import { studentQuantile } from "../numeric/student.ts";
import type { Note } from "../physics/note.ts";

/** One reading of the lip's height. */
export interface RideHeightPoint {
  /** on the vehicle beside its own weight, below 0 where it is lifted [N] */
  readonly load: number;
  /** of the lip over the surface; 0 where the skirt touches [m] */
  readonly height: number;
  /** which test it belongs to: each has a height of its own, all have one stiffness [-] */
  readonly test?: number;
}

export interface RideHeightRequest {
  readonly points: readonly RideHeightPoint[];
  /** standard uncertainty of one height; {@link USUAL_GAUGE} unless given [m] */
  readonly heightUncertainty?: number;
  /** standard uncertainty of one load, another in each reading; 0 unless given [N] */
  readonly loadUncertainty?: number;
}

export interface RideHeightFit {
  /** k of tyres and springs together [N/m] */
  readonly stiffness: number;
  /** of the lip with nothing on the vehicle but its own weight, test by test [m] */
  readonly heights: readonly number[];
  /** standard, of k [N/m] and of the first test's height [m] */
  readonly standardErrors: { readonly stiffness: number; readonly height: number };
  /** mean load of the first test, where the line is known best [N], and how well there, as a standard uncertainty [m] */
  readonly middle: { readonly load: number; readonly error: number };
  /** behind the errors; null where the gauge's own uncertainty is behind them [-] */
  readonly dof: number | null;
  /** of the heights about the line; null where no reading is left over [m] */
  readonly residualSd: number | null;
  readonly warnings: readonly Note[];
}

/** Height read with feeler gauges in steps of 0.05 mm, as a standard uncertainty [m]. Common practice, no source. */
export const USUAL_GAUGE = 2e-5;
/** Share of two-sided Student t beyond which a bend is seen. */
const SEEN = 0.975;
/** Relative uncertainty of k above which it is said to be rough [-]. Judgement. */
const ROUGH = 0.3;

/**
 * Vertical stiffness of the running gear from the lip's height under load.
 *
 *     h = h₀ − N/k, least squares, one k over all tests;  u(k) = k²·u(slope), by the larger of the heights' scatter and √(u²(h) + u²(N)/k²)
 *
 * @param request - loads beside the vehicle's own weight [N], heights [m], standard uncertainty of a height [m] and of a load [N]
 * @returns k [N/m], heights without load [m], standard errors, degrees of freedom [-], scatter [m], notes
 * @throws {OutOfRangeError} on a number that is not finite, a height below 0, an uncertainty of the height that is not above 0, of the load below 0
 * @throws {NotEnoughDataError} where no test has two loads that differ, or the lip does not come down as the load grows
 *
 * Valid for the loads read; readings at which the skirt touches lie on no line and are left out. Source: Hooke's law; docs/method/fits/ride-height.md
 */
export function fitRideHeight(request: RideHeightRequest): RideHeightFit {
  const height = requirePositive("heightUncertainty", request.heightUncertainty ?? USUAL_GAUGE);
  const load = requireNonNegative("loadUncertainty", request.loadUncertainty ?? 0);
  request.points.forEach(check);
  const points = request.points.filter(({ height }) => height > 0);
  const tests = [...new Set(points.map(({ test = 0 }) => test))];
  requireLoads(points, tests);
  const line = lineThrough(points, tests, []);
  const slope = line.coefficients[tests.length];
  if (!(slope < 0)) throw notDown();
  const gauge = Math.hypot(height, load * slope);
  const residualSd = line.dof > 0 ? line.residualSd : null;
  const scattered = residualSd !== null && residualSd > gauge;
  const errors = errorsOf(points, tests, scattered ? residualSd : gauge);
  const fit = {
    stiffness: -1 / slope,
    heights: line.coefficients.slice(0, tests.length),
    standardErrors: { stiffness: errors.slope / slope ** 2, height: errors.height },
    middle: errors.middle,
    dof: scattered ? line.dof : null,
    residualSd,
  };
  const bent = isBent(points, tests, gauge);
  const touching = request.points.length - points.length;
  return { ...fit, warnings: notesFor(fit, { bent, touching, stated: request.heightUncertainty }) };
}

/**
 * Height of the lip under a load, by the line of the first test.
 *
 *     h = h₀ − N/k,  u² = u²(middle) + (u(k)/k²)²·(N − N_middle)²
 *
 * @param fit - from {@link fitRideHeight} [N/m, m]
 * @param load - N beside the vehicle's own weight [N]
 * @returns height and its standard uncertainty [m]; below 0 where the skirt would touch
 *
 * Valid for the loads read. Source: straight line by least squares; docs/method/fits/ride-height.md
 */
export function heightUnder(
  fit: Pick<RideHeightFit, "stiffness" | "heights" | "standardErrors" | "middle">,
  load: number,
): { readonly height: number; readonly error: number } {
  const { stiffness, heights, standardErrors, middle } = fit;
  const slope = standardErrors.stiffness / stiffness ** 2;
  return {
    height: heights[0] - load / stiffness,
    error: Math.hypot(middle.error, slope * (load - middle.load)),
  };
}

function check({ load, height }: RideHeightPoint, i: number): void {
  if (!Number.isFinite(load)) throw new OutOfRangeError(`points.${i}.load`, load, "a finite number");
  if (!(height >= 0 && height < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError(`points.${i}.height`, height, "finite, 0 or greater");
}

function requireLoads(points: readonly RideHeightPoint[], tests: readonly number[]): void {
  const differing = tests.some((each) => {
    const loads = points.filter(({ test = 0 }) => test === each).map(({ load }) => load);
    return loads.some((load) => load !== loads[0]);
  });
  if (differing) return;
  throw new NotEnoughDataError(
    points.length === 0
      ? "No height above 0 was read."
      : "All heights above 0 were read at one load: they show no stiffness.",
    "Read the lip's height at two loads or more: the vehicle alone, and with weights on it.",
    "points",
  );
}

const notDown = () =>
  new NotEnoughDataError(
    "The lip does not come down as the load grows, so these heights show no stiffness.",
    "Read them again with loads further apart; running gear that does not give needs no such test.",
    "points",
  );

/** Heights by each test's own start, and powers of the load. */
function lineThrough(
  points: readonly RideHeightPoint[],
  tests: readonly number[],
  powers: readonly number[],
): LinearFit {
  const design = points.map(({ load, test = 0 }) => [
    ...tests.map((each) => (each === test ? 1 : 0)),
    load,
    ...powers.map((power) => load ** power),
  ]);
  return fitLinear({ design, response: points.map(({ height }) => height) });
}

/** Standard errors where each height is good to `sd` [m]. */
function errorsOf(points: readonly RideHeightPoint[], tests: readonly number[], sd: number) {
  const means = tests.map((each) => {
    const own = points.filter(({ test = 0 }) => test === each);
    return { count: own.length, mean: own.reduce((sum, { load }) => sum + load, 0) / own.length };
  });
  const spread = points.reduce(
    (sum, { load, test = 0 }) => sum + (load - means[tests.indexOf(test)].mean) ** 2,
    0,
  );
  const slope = sd / Math.sqrt(spread);
  const [{ count, mean }] = means;
  const middle = { load: mean, error: sd / Math.sqrt(count) };
  return { slope, middle, height: Math.hypot(middle.error, slope * mean) };
}

/** Whether a square of the load is seen, beside the scatter and beside the gauge. */
function isBent(points: readonly RideHeightPoint[], tests: readonly number[], gauge: number): boolean {
  const loads = new Set(points.map(({ load }) => load));
  if (loads.size < 3 || points.length < tests.length + 4) return false;
  const { coefficients, standardErrors, dof, residualSd } = lineThrough(points, tests, [2]);
  const [bend, error] = [coefficients, standardErrors ?? []].map((each) => each[tests.length + 1]);
  if (!(residualSd > 0)) return false;
  return Math.abs(bend) > studentQuantile(SEEN, dof) * error * Math.max(1, gauge / residualSd);
}

interface Seen {
  readonly bent: boolean;
  readonly touching: number;
  readonly stated: number | undefined;
}

function notesFor(
  { stiffness, standardErrors }: Pick<RideHeightFit, "stiffness" | "standardErrors">,
  { bent, touching, stated }: Seen,
): Note[] {
  const notes: Note[] = [];
  const note = (code: string, message: string) => notes.push({ code, message });
  if (touching > 0)
    note(
      "skirt-touched",
      `${touching === 1 ? "One reading" : `${touching} readings`} with the skirt on the surface: left out of the line.`,
    );
  if (bent)
    note(
      "bent-line",
      "The heights bend away from a straight line: k is the mean over the loads read. Read at the loads that it meets.",
    );
  if (standardErrors.stiffness > ROUGH * stiffness)
    note("rough-stiffness", "The stiffness is rough: take loads further apart, or read more heights.");
  if (stated === undefined)
    note("usual-gauge", "No uncertainty of the height is stated: ±0.02 mm is taken (common practice).");
  return notes;
}
