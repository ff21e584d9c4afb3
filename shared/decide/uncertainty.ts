import { NoAnswerError, NotEnoughDataError, OutOfRangeError } from "../numeric/errors.ts";
import { scrambledSobol } from "../numeric/sobol.ts";
import { cosineOfDegrees, sineOfDegrees } from "../physics/hold/angle.ts";
import { leastAttitude, leastMarginUnder, worstAttitudeUnder } from "../physics/hold/holdUnder.ts";
import { CONDITION_COUNT, CONDITIONS, compileHold, type HoldLaw } from "../physics/hold/law.ts";
import type { Pull } from "../physics/hold/pull.ts";
import { worstAttitude } from "../physics/hold/worst.ts";
import { STANDARD_ANGLES } from "../physics/predict.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import { emptyPoint, pointLaw, type SampledPoint } from "./sampledPoint.ts";
import { sparsePull } from "./sampledPull.ts";
import { type Quantiles, quantilesOf, type Spread, shareError, spreadOf, TOGETHER } from "./spread.ts";
import type { Uncertain } from "./uncertain.ts";
import { type Uncertainties, uncertainInputs } from "./uncertainInput.ts";
import { varianceShares } from "./varianceShares.ts";

export type { Correlated } from "./correlated.ts";
export { type Quantiles, type Spread, TOGETHER } from "./spread.ts";

export interface StatedUncertainty extends Uncertainties {
  /** 2048 unless given */
  readonly samples?: number;
  /** 1 unless given */
  readonly seed?: number;
  /** attitudes to answer for [°]; floor, wall, ceiling and the nominal worst unless given */
  readonly angles?: readonly number[];
}

export interface AttitudeUncertainty {
  /** θ [°] */
  readonly angle: number;
  readonly parked: Spread;
  readonly driving: Spread;
}

/** A number's part of the doubt, or that of a group, its paths joined by {@link TOGETHER}. */
export interface Share {
  readonly path: string;
  readonly share: number;
}

export interface Uncertainty {
  readonly attitudes: readonly AttitudeUncertainty[];
  /** of each attitude's P(hold) [-] */
  readonly samplingError: readonly {
    readonly angle: number;
    readonly parked: number;
    readonly driving: number;
  }[];
  /** F_s [N] */
  readonly suction: Quantiles;
  /** the operating point's flow [m³/s] and pressure [Pa]; null without a cavity or without a point */
  readonly point: { readonly flow: Quantiles; readonly pressure: Quantiles } | null;
  /** of the variance of the worst driving margin, largest first */
  readonly shares: readonly Share[];
}

export const DEFAULT_SAMPLES = 2048;
export const DEFAULT_SEED = 1;
const MOST_SAMPLES = 100_000;
const PARKED_COUNT = CONDITIONS.tip[1];

function marginAt(hold: HoldLaw, conditions: number, pull: Pull, angle: number): number {
  return leastMarginUnder(hold, conditions, pull, sineOfDegrees(angle), cosineOfDegrees(angle));
}

/** Step in search of a sample's own worst attitude [°]. */
const SCAN_STEP = 15;

/** Driving margin on the worst attitude of one sample. */
function worstMargin(hold: HoldLaw, pull: Pull): number {
  const at = (angle: number) => marginAt(hold, CONDITION_COUNT, pull, angle);
  const rigid = () => worstAttitude(hold, CONDITION_COUNT, pull.set);
  return at(pull.giving ? (leastAttitude(at, SCAN_STEP) ?? rigid()) : rigid());
}

function samplesOf({ samples = DEFAULT_SAMPLES }: StatedUncertainty): number {
  if (Number.isInteger(samples) && samples >= 2 && samples <= MOST_SAMPLES) return samples;
  throw new OutOfRangeError("samples", samples, `a whole number, 2 to ${MOST_SAMPLES}`);
}

/** A sample far out may be a build that can't be: then it is the uncertainty that is too large, not a number that was given. */
function answered(solve: (into: SampledPoint) => void, into: SampledPoint): void {
  try {
    solve(into);
  } catch (error) {
    if (error instanceof NoAnswerError)
      throw new NotEnoughDataError(
        `A sample far from the build as stated has no answer: ${error.message}`.replace(/\.?$/, "."),
        "State smaller uncertainties.",
        "uncertainty",
      );
    throw error;
  }
}

interface Sampled {
  readonly parked: readonly Float64Array[];
  readonly driving: readonly Float64Array[];
  /** driving margin on each sample's own worst attitude */
  readonly worst: Float64Array;
  readonly suction: Float64Array;
  readonly flow: Float64Array;
  readonly pressure: Float64Array;
  /** independent values of each input, in the inputs' order */
  readonly values: readonly Float64Array[];
}

function emptySamples(count: number, angles: number, dimensions: number): Sampled {
  const column = () => new Float64Array(count);
  const columns = (wanted: number) => Array.from({ length: wanted }, column);
  return {
    parked: columns(angles),
    driving: columns(angles),
    worst: column(),
    suction: column(),
    flow: column(),
    pressure: column(),
    values: columns(dimensions),
  };
}

/** Solves every sample and hands it on: its place, its point and its hold, and each input's own value. */
function eachSample(
  copy: AnyPredictInput,
  inputs: readonly Uncertain[],
  asked: StatedUncertainty,
  take: (i: number, point: SampledPoint, hold: HoldLaw, values: Float64Array) => void,
): void {
  const count = samplesOf(asked);
  const dimensions = dimensionsOf(inputs);
  const uniform = scrambledSobol(count, Math.max(1, dimensions), asked.seed ?? DEFAULT_SEED);
  const independent = new Float64Array(Math.max(1, dimensions));
  const values = new Float64Array(dimensions);
  const solve = pointLaw(copy);
  const point = emptyPoint();
  const hold = compileHold(copy.vehicle);
  for (let i = 0; i < count; i++) {
    let place = 0;
    for (const { write, dimensions: taken } of inputs) {
      write(uniform, i * dimensions + place, independent);
      for (let k = 0; k < taken; k++) values[place + k] = independent[k];
      place += taken;
    }
    compileHold(copy.vehicle, hold);
    answered(solve, point);
    take(i, point, hold, values);
  }
}

const dimensionsOf = (inputs: readonly Uncertain[]): number =>
  inputs.reduce((sum, input) => sum + input.dimensions, 0);

function sampled(
  copy: AnyPredictInput,
  inputs: readonly Uncertain[],
  angles: readonly number[],
  asked: StatedUncertainty,
): Sampled {
  const into = emptySamples(samplesOf(asked), angles.length, dimensionsOf(inputs));
  eachSample(copy, inputs, asked, (i, point, hold, values) => {
    for (let k = 0; k < values.length; k++) into.values[k][i] = values[k];
    keep(into, i, point, hold, angles);
  });
  return into;
}

function keep(into: Sampled, i: number, at: SampledPoint, hold: HoldLaw, angles: readonly number[]): void {
  into.suction[i] = at.suction;
  into.flow[i] = at.flow;
  into.pressure[i] = at.pressure;
  const pull = sparsePull(hold, at.pull);
  for (let j = 0; j < angles.length; j++) {
    into.parked[j][i] = marginAt(hold, PARKED_COUNT, pull, angles[j]);
    into.driving[j][i] = marginAt(hold, CONDITION_COUNT, pull, angles[j]);
  }
  into.worst[i] = worstMargin(hold, pull);
}

/** Floor, wall, ceiling, and where the nominal build drives worst. */
function anglesOf(build: AnyPredictInput): number[] {
  const point = emptyPoint();
  pointLaw(build)(point);
  const worst = worstAttitudeUnder(compileHold(build.vehicle), CONDITION_COUNT, point.pull);
  return [...new Set([...STANDARD_ANGLES, worst])];
}

function sharesOf({ worst, values }: Sampled, inputs: readonly Uncertain[]): Share[] {
  const needed = (_: number, i: number) => worst[i] < Number.POSITIVE_INFINITY;
  const isNeeded = worst.every((margin) => margin < Number.POSITIVE_INFINITY);
  const kept = (column: Float64Array) => (isNeeded ? column : column.filter(needed));
  const each = varianceShares(values.map(kept), kept(worst));
  let place = 0;
  const shares = inputs.flatMap(({ paths, dimensions }) => {
    if (dimensions === 0) return [];
    const own = each.slice(place, place + dimensions);
    place += dimensions;
    return [{ path: paths.join(TOGETHER), share: own.reduce((sum, share) => sum + share, 0) }];
  });
  return shares.sort((a, b) => b.share - a.share);
}

function pointOf({ flow, pressure }: Sampled): Uncertainty["point"] {
  const turning = (_: number, i: number) => !Number.isNaN(flow[i]);
  const flows = flow.filter(turning);
  return flows.length === 0
    ? null
    : { flow: quantilesOf(flows), pressure: quantilesOf(pressure.filter(turning)) };
}

/**
 * What the uncertainties of a build's numbers make of its margins.
 *
 *     x normal, cut at what is possible, by scrambled Sobol points;  each sample predicted in full;  quantiles, P(hold), first-order shares
 *
 * @param build - nominal build, all SI [-]
 * @param asked - what is uncertain [unit of each number], samples and seed [-], attitudes [°]
 * @returns 5, 50 and 95 % of the margins and P(hold) with its sampling error on every attitude asked for [°, -], of suction [N] and operating point [m³/s, Pa]; shares of the variance of the worst driving margin, one for each number or group [-]
 * @throws {OutOfRangeError} on a path at which there is no number or that stands twice, a negative uncertainty, a matrix that is no covariance, a count of samples beyond 2…100 000, more than 64 independent directions
 * @throws {NotEnoughDataError} where uncertainties are so large that a sample has no answer
 *
 * Valid for numbers and groups independent of each other. With a stall hump the crossing next to the nominal one is taken in every sample. Source: docs/method/uncertainty.md
 */
export function uncertaintyOf(build: AnyPredictInput, asked: StatedUncertainty): Uncertainty {
  const angles = asked.angles ?? anglesOf(build);
  const copy = structuredClone(build);
  const inputs = uncertainInputs(copy, asked);
  const margins = sampled(copy, inputs, angles, asked);
  const attitudes = angles.map((angle, j) => ({
    angle,
    parked: spreadOf(margins.parked[j]),
    driving: spreadOf(margins.driving[j]),
  }));
  const error = ({ holds }: Spread) => shareError(holds, margins.worst.length);
  return {
    attitudes,
    samplingError: attitudes.map(({ angle, parked, driving }) => ({
      angle,
      parked: error(parked),
      driving: error(driving),
    })),
    suction: quantilesOf(margins.suction),
    point: pointOf(margins),
    shares: sharesOf(margins, inputs),
  };
}

/**
 * The margin of one attitude alone, by the same samples as {@link uncertaintyOf}.
 *
 * @param build - nominal build, all SI [-]
 * @param asked - what is uncertain [unit of each number], samples and seed [-]
 * @param wanted - attitude θ [°] and mode
 * @returns 5, 50 and 95 % of that margin, and P(hold) [-]
 * @throws as {@link uncertaintyOf}
 *
 * Valid and source: as {@link uncertaintyOf}, at about half its cost
 */
export function marginSpread(
  build: AnyPredictInput,
  asked: StatedUncertainty,
  { angle, mode }: { readonly angle: number; readonly mode: "parked" | "driving" },
): Spread {
  const copy = structuredClone(build);
  const inputs = uncertainInputs(copy, asked);
  const margins = new Float64Array(samplesOf(asked));
  const conditions = mode === "parked" ? PARKED_COUNT : CONDITION_COUNT;
  eachSample(copy, inputs, asked, (i, point, hold) => {
    margins[i] = marginAt(hold, conditions, sparsePull(hold, point.pull), angle);
  });
  return spreadOf(margins);
}

/**
 * The driving margin of every sample, each on its own worst attitude.
 *
 * @param build - nominal build, all SI [-]
 * @param asked - what is uncertain [unit of each number], samples and seed [-]
 * @returns margins, in the samples' order; infinite where no suction is needed [-]
 * @throws as {@link uncertaintyOf}
 *
 * Valid and source: as {@link uncertaintyOf}
 */
export function worstMargins(build: AnyPredictInput, asked: StatedUncertainty): Float64Array {
  const copy = structuredClone(build);
  const inputs = uncertainInputs(copy, asked);
  const margins = new Float64Array(samplesOf(asked));
  eachSample(copy, inputs, asked, (i, point, hold) => {
    margins[i] = worstMargin(hold, sparsePull(hold, point.pull));
  });
  return margins;
}
