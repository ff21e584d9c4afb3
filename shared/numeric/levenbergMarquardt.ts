import { NotEnoughDataError, OutOfRangeError } from "./errors.ts";
import { createJacobian, type Jacobian, type Residuals } from "./jacobian.ts";
import { applyTransposedQ, factorQr, inverseUpperColumns, type Qr, solveUpper, upperFactor } from "./qr.ts";
import { scaledConditioning } from "./singularValues.ts";

export interface NonlinearProblem {
  /** weighted residuals of a set of parameters: √w·(model − reading), one a reading */
  readonly residuals: Residuals;
  /** their derivatives, one row a reading; fourth-order differences unless given */
  readonly jacobian?: Jacobian;
  readonly start: readonly number[];
  /** typical size of each parameter, for the differences and the first steps; |start| (1 at 0) unless given */
  readonly sizes?: readonly number[];
}

export interface NonlinearOptions {
  /** an answer's largest relative offset: the part of the residuals that a full step would still explain, against the rest [-] */
  readonly gtol?: number;
  /** or its largest full step against the parameters themselves, each weighed by its effect: for residuals that vanish [-] */
  readonly xtol?: number;
  readonly maxIterations?: number;
}

export interface NonlinearFit {
  readonly coefficients: number[];
  /** null where no degree of freedom is left to judge them by */
  readonly standardErrors: number[] | null;
  /** null where no degree of freedom is left to judge it by */
  readonly covariance: number[][] | null;
  /** √(rss/dof); 0 where dof is 0 */
  readonly residualSd: number;
  readonly rss: number;
  readonly dof: number;
  /** at the answer, as the caller's function gives them */
  readonly residuals: number[];
  /** of the derivatives with their columns scaled to length 1 [-] */
  readonly conditionNumber: number;
  /** false where neither criterion was met: the numbers are then only the best ones seen */
  readonly converged: boolean;
  readonly iterations: number;
}

interface State {
  readonly x: number[];
  readonly r: Float64Array;
  readonly rss: number;
}

/** A linear model of the residuals around a state, and its full (Gauss–Newton) step. */
interface LinearModel {
  readonly columns: Float64Array;
  readonly qr: Qr;
  /** Qᵀr */
  readonly turned: Float64Array;
}

/** Far stricter than the 1e-3 of Bates & Watts, and well above rounding. */
const DEFAULT_GTOL = 1e-6;
const DEFAULT_XTOL = 1e-12;
const DEFAULT_MAX_ITERATIONS = 2000;
/** Damping against the scaled curvature, at the start and where no step can help any more. */
const FIRST_DAMPING = 1e-3;
const MAX_DAMPING = 1e20;
/** Full steps at the end, where the rss no longer shows what they gain; each must shorten the offset to this share. */
const MAX_POLISHING = 60;
const POLISHED_SHARE = 0.9;
/** Scaled condition number from which parameters count as the same: derivatives by differences are good to about 12 digits. */
const MAX_CONDITION = 1e11;

/**
 * Nonlinear least squares by damped Gauss–Newton steps.
 *
 *     min Σ rᵢ(b)²,  step: min ‖r + J·s‖² + μ‖D·s‖²,  D = largest column lengths of J so far,  cov b = s²(JᵀJ)⁻¹
 *
 * Written here because the well-kept ml-levenberg-marquardt (5.1.0) keeps 2.7 digits of NIST's Hahn1 at best with its own differences, from the second
 * start over 30 settings, damps all parameters alike whatever their units, and reports no covariance.
 *
 * @param problem - residuals, derivatives, start, sizes [unit of each parameter]
 * @param options - gtol 1e-6, xtol 1e-12, most steps tried 2000 [-]
 * @returns the parameters with their doubt, whether a criterion was met, the steps tried [unit of each parameter]
 * @throws {NotEnoughDataError} on fewer residuals than parameters, or parameters that can't be told apart at the answer
 * @throws {OutOfRangeError} on residuals that are not finite at the start
 *
 * Valid for residuals smooth around the path; the answer is a local minimum. A step to residuals that are not finite is refused and shortened.
 * Source: Moré, in Numerical Analysis, Lecture Notes in Mathematics 630 (1978) 105–116 (scaling); Nielsen, report IMM-REP-1999-05, DTU (damping);
 * Bates & Watts, Technometrics 23 (1981) 179–183 (criterion)
 */
export function fitNonlinear(problem: NonlinearProblem, options: NonlinearOptions = {}): NonlinearFit {
  const { gtol = DEFAULT_GTOL, xtol = DEFAULT_XTOL, maxIterations = DEFAULT_MAX_ITERATIONS } = options;
  const jacobian = problem.jacobian ?? createJacobian(problem.residuals, problem.start, problem.sizes);
  let state = firstState(problem);
  let model = linearise(jacobian, state);
  const scale = growingScale(model.columns, state);
  const damping = new Damping();
  let iterations = 0;
  const isAnswer = () => offsetOf(model) <= gtol || stepShare(model, state, scale) <= xtol;
  while (!isAnswer() && iterations < maxIterations && damping.value < MAX_DAMPING) {
    iterations += 1;
    const { trial, predicted } = dampedStep(problem.residuals, model, state, scale, damping.value);
    const gain = trial.rss < state.rss ? (state.rss - trial.rss) / predicted : 0;
    damping.learn(gain);
    if (!(gain > 0)) continue;
    state = trial;
    model = linearise(jacobian, state);
    grow(scale, model.columns, state.r.length);
  }
  const converged = isAnswer();
  if (converged) [state, model] = polished(problem.residuals, jacobian, state, model);
  return { ...described(model, state), converged, iterations };
}

/** Full steps as long as they bring the residuals nearer to right angles with the columns. */
function polished(
  residuals: Residuals,
  jacobian: Jacobian,
  state: State,
  model: LinearModel,
): [State, LinearModel] {
  let best: [State, LinearModel] = [state, model];
  for (let i = 0; i < MAX_POLISHING; i += 1) {
    const [from, around] = best;
    const step = fullStep(around, from.x.length);
    const trial = stateAt(
      residuals,
      from.x.map((x, j) => x - step[j]),
    );
    if (!Number.isFinite(trial.rss)) return best;
    const next = linearise(jacobian, trial);
    if (!(offsetOf(next) < POLISHED_SHARE * offsetOf(around))) return best;
    best = [trial, next];
  }
  return best;
}

function firstState(problem: NonlinearProblem): State {
  const state = stateAt(problem.residuals, [...problem.start]);
  const [readings, parameters] = [state.r.length, problem.start.length];
  if (!(parameters > 0)) throw new OutOfRangeError("number of parameters", parameters, "1 or more");
  if (readings < parameters)
    throw new NotEnoughDataError(
      `${parameters} parameters can't be found from ${readings} readings.`,
      `Measure at ${parameters - readings} more places.`,
    );
  if (!Number.isFinite(state.rss)) throw new OutOfRangeError("rss at the start", state.rss, "finite");
  return state;
}

function stateAt(residuals: Residuals, x: number[]): State {
  const r = Float64Array.from(residuals(x));
  return { x, r, rss: r.reduce((sum, value) => sum + value * value, 0) };
}

function linearise(jacobian: Jacobian, state: State): LinearModel {
  const [rows, parameters] = [state.r.length, state.x.length];
  const columns = new Float64Array(rows * parameters);
  jacobian(state.x).forEach((row, i) => {
    for (let j = 0; j < parameters; j += 1) columns[i + j * rows] = row[j];
  });
  const qr = factorQr(columns, rows, parameters);
  const turned = Float64Array.from(state.r);
  applyTransposedQ(qr, turned);
  return { columns, qr, turned };
}

/** Relative offset: length of the part of the residuals that the columns explain, against the length of the rest. */
function offsetOf({ turned, qr }: LinearModel): number {
  let [explained, rest] = [0, 0];
  turned.forEach((value, i) => {
    if (i < qr.columns) explained += value * value;
    else rest += value * value;
  });
  return explained === 0 ? 0 : Math.sqrt(explained / rest);
}

function fullStep({ turned, qr }: LinearModel, parameters: number): Float64Array {
  const step = turned.slice(0, parameters);
  solveUpper(qr, step);
  return step;
}

/** Length of the full step against that of the parameters, each times its scale. */
function stepShare(model: LinearModel, state: State, scale: Float64Array): number {
  const step = fullStep(model, state.x.length);
  const size = (values: ArrayLike<number>) => Math.hypot(...scale.map((d, j) => d * values[j]));
  return size(step) / size(state.x);
}

function growingScale(columns: Float64Array, state: State): Float64Array {
  const scale = new Float64Array(state.x.length);
  grow(scale, columns, state.r.length);
  return scale.map((length) => (length > 0 ? length : 1));
}

/** Moré's scale: the largest length that each column of J has had. */
function grow(scale: Float64Array, columns: Float64Array, rows: number): void {
  for (let j = 0; j < scale.length; j += 1) {
    let square = 0;
    for (let i = j * rows; i < (j + 1) * rows; i += 1) square += columns[i] ** 2;
    scale[j] = Math.max(scale[j], Math.sqrt(square));
  }
}

/** Solves the damped problem by QR of J over √μ·D, and tries the step. */
function dampedStep(residuals: Residuals, model: LinearModel, state: State, scale: Float64Array, mu: number) {
  const [rows, parameters] = [state.r.length, state.x.length];
  const tall = rows + parameters;
  const stacked = new Float64Array(tall * parameters);
  const step = new Float64Array(tall);
  step.set(state.r);
  for (let j = 0; j < parameters; j += 1) {
    stacked.set(model.columns.subarray(j * rows, (j + 1) * rows), j * tall);
    stacked[rows + j + j * tall] = Math.sqrt(mu) * scale[j];
  }
  const qr = factorQr(stacked, tall, parameters);
  applyTransposedQ(qr, step);
  // The part of (r, 0) that the columns explain is what the damped model gains: ‖r‖² − ‖r + Js‖² − μ‖Ds‖².
  const predicted = step.slice(0, parameters).reduce((sum, value) => sum + value * value, 0);
  solveUpper(qr, step);
  const trial = stateAt(
    residuals,
    state.x.map((x, j) => x - step[j]),
  );
  return { trial, predicted };
}

/** Nielsen's rule: damping falls smoothly with a good gain and grows ever faster while steps fail. */
class Damping {
  value = FIRST_DAMPING;
  private growth = 2;

  learn(gain: number): void {
    if (gain > 0) {
      this.value *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      this.growth = 2;
      return;
    }
    this.value *= this.growth;
    this.growth *= 2;
  }
}

function described(model: LinearModel, state: State) {
  const [readings, parameters] = [state.r.length, state.x.length];
  const { conditionNumber } = scaledConditioning(upperFactor(model.qr));
  if (!(conditionNumber < MAX_CONDITION))
    throw new NotEnoughDataError(
      `The ${parameters} parameters can't be told apart from these readings.`,
      "Measure where the model's answer depends on each of them in its own way, or give one of them.",
    );
  const dof = readings - parameters;
  const fit = {
    coefficients: state.x,
    rss: state.rss,
    dof,
    residuals: Array.from(state.r),
    conditionNumber,
    residualSd: dof > 0 ? Math.sqrt(state.rss / dof) : 0,
  };
  if (dof === 0) return { ...fit, covariance: null, standardErrors: null };
  const inverse = inverseUpperColumns(model.qr);
  const covariance = state.x.map((_, j) =>
    state.x.map((_unused, k) => (inverse.reduce((sum, c) => sum + c[j] * c[k], 0) * state.rss) / dof),
  );
  return { ...fit, covariance, standardErrors: covariance.map((row, j) => Math.sqrt(row[j])) };
}
