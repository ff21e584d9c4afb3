import { NoConvergenceError, NotEnoughDataError, OutOfRangeError } from "../numeric/errors.ts";
import { scrambledSobol } from "../numeric/sobol.ts";
import { cosineOfDegrees, sineOfDegrees } from "../physics/hold/angle.ts";
import {
  CONDITION_COUNT,
  CONDITIONS,
  compileHold,
  type HoldLaw,
  marginOver,
  neededSuction,
} from "../physics/hold/law.ts";
import { worstAttitude } from "../physics/hold/worst.ts";
import { arrivalPoint, crossingNear, operatingPoints } from "../physics/operatingPoint.ts";
import { assemble, type PredictInput, STANDARD_ANGLES, suctionAt } from "../physics/predict.ts";
import { type PropellerPredictInput, predictPropeller } from "../physics/propeller.ts";
import { type Uncertain, uncertainInputs } from "./uncertainInput.ts";
import { varianceShares } from "./varianceShares.ts";

export interface Uncertainty {
  /** standard uncertainty by path ("skirt.gap"), in the number's own unit */
  readonly uncertainty: Readonly<Record<string, number>>;
  /** 2048 unless given */
  readonly samples?: number;
  /** 1 unless given */
  readonly seed?: number;
}

/** Quantiles of a margin: null where no suction is needed. */
export interface Spread {
  readonly p5: number | null;
  readonly p50: number | null;
  readonly p95: number | null;
  /** share of samples with a margin of 1 or more, or no suction needed */
  readonly holds: number;
}

export interface AttitudeDoubt {
  /** θ [°] */
  readonly angle: number;
  readonly parked: Spread;
  readonly driving: Spread;
}

export interface Doubt {
  readonly attitudes: readonly AttitudeDoubt[];
  /** of the variance of the worst driving margin, largest first */
  readonly shares: readonly { readonly path: string; readonly share: number }[];
}

/** A build of either kind. */
export type UncertainBuild = PredictInput | PropellerPredictInput;

const DEFAULT_SAMPLES = 2048;
const DEFAULT_SEED = 1;
const MOST_SAMPLES = 100_000;
const [P5, P50, P95] = [0.05, 0.5, 0.95];
const PARKED_COUNT = CONDITIONS.tip[1];

/** Suction of a build by its present numbers [N], each operating point looked for next to that of the nominal build. */
function suctionLaw(build: UncertainBuild): () => number {
  if ("thrust" in build.rotor) {
    const propeller = build as PropellerPredictInput;
    return () => predictPropeller(propeller, []).suction;
  }
  const input = build as PredictInput;
  const nominal = assemble(input);
  let near = arrivalPoint(operatingPoints(nominal.machine, nominal.leak))?.phi ?? 0;
  return () => {
    const { machine, leak } = assemble(input);
    const point = crossingNear(machine, leak, near);
    if (near === 0) near = point?.phi ?? 0;
    return point ? Math.max(0, suctionAt(input, leak, point.pressure, point.flow)) : 0;
  };
}

function marginAt(hold: HoldLaw, conditions: number, suction: number, angle: number): number {
  const needed = neededSuction(hold, 0, conditions, suction, sineOfDegrees(angle), cosineOfDegrees(angle));
  return marginOver(suction, needed);
}

function quantile(sorted: Float64Array, share: number): number | null {
  const place = share * (sorted.length - 1);
  const [below, above] = [sorted[Math.floor(place)], sorted[Math.ceil(place)]];
  if (above === Number.POSITIVE_INFINITY) return null;
  return below + (place - Math.floor(place)) * (above - below);
}

function spreadOf(margins: Float64Array): Spread {
  const sorted = margins.toSorted();
  const held = margins.reduce((count, margin) => (margin >= 1 ? count + 1 : count), 0);
  return {
    p5: quantile(sorted, P5),
    p50: quantile(sorted, P50),
    p95: quantile(sorted, P95),
    holds: held / margins.length,
  };
}

function samplesOf({ samples = DEFAULT_SAMPLES }: Uncertainty): number {
  if (Number.isInteger(samples) && samples >= 2 && samples <= MOST_SAMPLES) return samples;
  throw new OutOfRangeError("samples", samples, `a whole number, 2 to ${MOST_SAMPLES}`);
}

/** A sample far out may be a build that can't be: then it is the uncertainty that is too large, not a number that was given. */
function answered(solve: () => number): number {
  try {
    return solve();
  } catch (error) {
    if (
      error instanceof OutOfRangeError ||
      error instanceof NotEnoughDataError ||
      error instanceof NoConvergenceError
    )
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
  /** values of each input */
  readonly values: readonly Float64Array[];
}

function sampled(
  copy: UncertainBuild,
  inputs: readonly Uncertain[],
  angles: readonly number[],
  asked: Uncertainty,
): Sampled {
  const count = samplesOf(asked);
  const uniform = scrambledSobol(count, Math.max(1, inputs.length), asked.seed ?? DEFAULT_SEED);
  const column = () => new Float64Array(count);
  const [parked, driving] = [angles.map(column), angles.map(column)];
  const [worst, values] = [column(), inputs.map(column)];
  const suctionNow = suctionLaw(copy);
  const hold = compileHold(copy.vehicle);
  for (let i = 0; i < count; i++) {
    inputs.forEach(({ write }, j) => {
      values[j][i] = write(uniform[i * inputs.length + j]);
    });
    compileHold(copy.vehicle, hold);
    const suction = answered(suctionNow);
    angles.forEach((angle, j) => {
      parked[j][i] = marginAt(hold, PARKED_COUNT, suction, angle);
      driving[j][i] = marginAt(hold, CONDITION_COUNT, suction, angle);
    });
    worst[i] = marginAt(hold, CONDITION_COUNT, suction, worstAttitude(hold, CONDITION_COUNT, suction));
  }
  return { parked, driving, worst, values };
}

/** Floor, wall, ceiling, and where the nominal build drives worst. */
function anglesOf(build: UncertainBuild): number[] {
  const worst = worstAttitude(compileHold(build.vehicle), CONDITION_COUNT, suctionLaw(build)());
  return [...new Set([...STANDARD_ANGLES, worst])];
}

function sharesOf({ worst, values }: Sampled, inputs: readonly Uncertain[]): Doubt["shares"] {
  const needed = (_: number, i: number) => worst[i] < Number.POSITIVE_INFINITY;
  const columns = values.map((column) => Array.from(column).filter(needed));
  const shares = varianceShares(columns, Array.from(worst).filter(needed));
  return inputs.map(({ path }, j) => ({ path, share: shares[j] })).sort((a, b) => b.share - a.share);
}

/**
 * What the uncertainties of a build's numbers make of its margins.
 *
 *     xᵢ normal, cut at what is possible, by scrambled Sobol points;  each sample through METHOD 1–7;  quantiles, P(hold), first-order shares
 *
 * @param build - nominal build, all SI [-]
 * @param asked - standard uncertainty by path [unit of each number], samples and seed [-]
 * @returns 5, 50 and 95 % of the margins and P(hold) on floor, wall, ceiling and the nominal worst attitude [°, -]; shares of the variance of the worst driving margin [-]
 * @throws {OutOfRangeError} on a path at which there is no number, a negative uncertainty, a count of samples beyond 2…100 000, more than 64 paths
 * @throws {NotEnoughDataError} where uncertainties are so large that a sample has no answer
 *
 * Valid for independent inputs. With a stall hump the crossing next to the nominal one is taken in every sample. Source: docs/method/uncertainty.md
 */
export function doubtOf(build: UncertainBuild, asked: Uncertainty): Doubt {
  const angles = anglesOf(build);
  const copy = structuredClone(build);
  const inputs = uncertainInputs(copy, asked.uncertainty);
  const margins = sampled(copy, inputs, angles, asked);
  return {
    attitudes: angles.map((angle, j) => ({
      angle,
      parked: spreadOf(margins.parked[j]),
      driving: spreadOf(margins.driving[j]),
    })),
    shares: sharesOf(margins, inputs),
  };
}
