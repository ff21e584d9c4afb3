import { NotEnoughDataError } from "../numeric/errors.ts";
import { fitPolynomial, type LinearFit } from "../numeric/leastSquares.ts";
import { asRead } from "../units/decimalMark.ts";

export interface CurvePoint {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

export interface CurveFit {
  /** ascending powers of x */
  readonly coefficients: readonly number[];
  /** of the coefficients; empty where no residual is left over */
  readonly covariance: readonly (readonly number[])[];
  readonly degree: number;
  /** why this degree, in words */
  readonly reason: string;
  /** √(Σwe²/dof), of a reading of weight 1; 0 where no residual is left over */
  readonly residualSd: number;
  readonly rSquared: number;
  /** null where there are too few points for it */
  readonly aicc: number | null;
  /** null where one point alone holds a coefficient */
  readonly leaveOneOutSd: number | null;
  /** indices of points whose studentised residual is beyond ±3 */
  readonly outliers: readonly number[];
  readonly dof: number;
}

export type DegreeWish = number | "auto";

const HIGHEST_DEGREE = 4;
/** A rotor's curve is bent: from three flows on a straight line is no candidate [-]. docs/method/fits/rotor.md, Degree */
export const LOWEST_DEGREE = 2;
/** Up to this many flows the criterion can't weigh one degree against another: its penalty grows without bound [-]. Judgement. */
const FEW_FLOWS = 5;
/** A studentised residual beyond it marks a point as an outlier [-]. Common practice, no source. */
const OUTLIER = 3;
/** Residuals below this share of the largest |y| are rounding, no evidence for or against a degree [-]. */
const ROUNDING = 1e-9;

/**
 * Weighted polynomial through points, its degree by the corrected Akaike criterion.
 *
 *     AICc = n·ln(RSS/n) + 2k + 2k(k+1)/(n−k−1),  k = degree + 2
 *
 * @param points - x, y, weight [any unit]
 * @param wish - the degree, or "auto": 2…4, never more than a third of the points; 2 with three to five flows, 1 with two [-]
 * @param flows - how many different x there are: a degree needs one more than itself [-]
 * @returns the fit, why its degree, and what stands out [unit of y over powers of x]
 * @throws {NotEnoughDataError} on fewer different x than the degree wished for needs, or fewer than two
 *
 * Valid for independent residuals of equal spread once weighted.
 * Source: Hurvich & Tsai, Biometrika 76 (1989) 297–307; Cook & Weisberg, Residuals and Influence in Regression (1982)
 */
export function fitCurve(points: readonly CurvePoint[], wish: DegreeWish, flows: number): CurveFit {
  if (flows < 2)
    throw new NotEnoughDataError(
      "All points lie at one flow.",
      "Take readings at two more flows at least, one of them blocked.",
      "points",
    );
  const data = dataOf(points);
  if (wish !== "auto") return fitAtDegree(data, wish, flows);
  if (isFewFlows(flows)) {
    const degree = Math.min(LOWEST_DEGREE, flows - 1);
    const reason = `degree ${degree}: ${flows} flows are too few to weigh one degree against another`;
    return described(data, tryDegree(data, degree), reason);
  }
  const most = Math.min(HIGHEST_DEGREE, Math.floor(points.length / 3));
  const tried = Array.from({ length: most - LOWEST_DEGREE + 1 }, (_, i) =>
    tryDegree(data, LOWEST_DEGREE + i),
  );
  const best = tried.reduce((a, b) => (criterion(b) < criterion(a) ? b : a));
  return described(data, best, reasonFor(best, tried, most));
}

/**
 * Whether flows are too few for the readings to choose the degree.
 *
 *     flows ≤ 5
 *
 * @param flows - how many different flows there are [-]
 * @returns true where {@link fitCurve} takes the degree without weighing it [-]
 *
 * Valid for any number. Source: judgement; docs/method/fits/rotor.md, Degree
 */
export function isFewFlows(flows: number): boolean {
  return flows <= FEW_FLOWS;
}

/** AICc, infinite where the points are too few for it. */
function criterion({ aicc }: Tried): number {
  return aicc ?? Number.POSITIVE_INFINITY;
}

/** The points as lists. */
interface CurveData {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly weights: readonly number[];
  /** largest |y| */
  readonly size: number;
}

function dataOf(points: readonly CurvePoint[]): CurveData {
  const y = points.map((point) => point.y);
  return {
    x: points.map((point) => point.x),
    y,
    weights: points.map((point) => point.weight),
    size: y.reduce((most, value) => Math.max(most, Math.abs(value)), 0),
  };
}

/** A fit of one degree, before it is known whether it is the one. */
interface Tried {
  readonly degree: number;
  readonly fit: LinearFit;
  readonly aicc: number | null;
}

function tryDegree({ x, y, weights, size }: CurveData, degree: number): Tried {
  const fit = fitPolynomial(x, y, degree, weights);
  return { degree, fit, aicc: correctedAkaike(fit.rss, weights, degree, size) };
}

function fitAtDegree(data: CurveData, degree: number, flows: number): CurveFit {
  if (flows < degree + 1)
    throw new NotEnoughDataError(
      `A curve of degree ${degree} needs ${degree + 1} different flows, there are ${flows}.`,
      "Take readings at more flows, or ask for a lower degree.",
      "points",
    );
  return described(data, tryDegree(data, degree), `degree ${degree}, as asked for`);
}

function reasonFor(best: Tried, tried: readonly Tried[], most: number): string {
  const limit = most < HIGHEST_DEGREE ? `${most} is the highest that so few points allow` : "";
  if (tried.length === 1) return `degree ${best.degree}: ${limit}`;
  const aicc = (fit: Tried) => `${fit.degree}: ${asRead(criterion(fit).toFixed(1))}`;
  const chosen = `degree ${best.degree} has the lowest AICc (${tried.map(aicc).join(", ")})`;
  return limit ? `${chosen}; ${limit}` : chosen;
}

/** A fit with all that is said about it. */
function described({ weights, size }: CurveData, { degree, fit, aicc }: Tried, reason: string): CurveFit {
  const outliers: number[] = [];
  studentise(fit, weights).forEach((t, i) => {
    if (Math.abs(t) > OUTLIER && Math.abs(fit.residuals[i]) > ROUNDING * size) outliers.push(i);
  });
  return {
    coefficients: fit.coefficients,
    covariance: fit.covariance ?? [],
    degree,
    reason,
    residualSd: fit.residualSd,
    rSquared: fit.rSquared,
    aicc,
    leaveOneOutSd: leaveOneOut(fit, weights),
    outliers,
    dof: fit.dof,
  };
}

/** k counts the coefficients and the variance. Weights are taken relative to their mean. */
function correctedAkaike(
  rss: number,
  weights: readonly number[],
  degree: number,
  size: number,
): number | null {
  const n = weights.length;
  const k = degree + 2;
  if (!(n - k - 1 > 0)) return null;
  const meanWeight = weights.reduce((sum, w) => sum + w, 0) / n;
  const meanSquare = Math.max(rss / meanWeight / n, (ROUNDING * size) ** 2, Number.MIN_VALUE);
  return n * Math.log(meanSquare) + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}

interface Residuals {
  readonly residuals: readonly number[];
  readonly leverages: readonly number[];
  readonly residualSd: number;
  readonly dof: number;
}

/** Each residual over its own standard deviation, that taken from the fit without the point (Cook & Weisberg). */
function studentise(fit: Residuals, weights: readonly number[]): number[] {
  const { residuals, leverages, residualSd, dof } = fit;
  if (!(dof > 1 && residualSd > 0)) return residuals.map(() => 0);
  return residuals.map((residual, i) => {
    const free = 1 - leverages[i];
    if (!(free > ROUNDING)) return 0;
    const inner = (residual * Math.sqrt(weights[i])) / (residualSd * Math.sqrt(free));
    const left = (dof - inner * inner) / (dof - 1);
    return left > 0 ? inner / Math.sqrt(left) : Math.sign(inner) * Number.POSITIVE_INFINITY;
  });
}

/** Root mean square of what each point misses the curve through all others by, weighted. */
function leaveOneOut(fit: Residuals, weights: readonly number[]): number | null {
  let sum = 0;
  let total = 0;
  for (const [i, residual] of fit.residuals.entries()) {
    const free = 1 - fit.leverages[i];
    if (!(free > ROUNDING)) return null;
    sum += weights[i] * (residual / free) ** 2;
    total += weights[i];
  }
  return Math.sqrt(sum / total);
}
