import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { Weather } from "../../physics/air.ts";
import type { PredictInput } from "../../physics/predict.ts";
import type { SkirtInput } from "../../physics/skirt.ts";

/** What was held true before the tests: normal, cut at 0. */
export interface Belief {
  readonly mean: number;
  /** standard uncertainty */
  readonly sd: number;
}

/** What was held true of the pull factor before the tests: log-normal. */
export interface FactorBelief {
  /** its median [-] */
  readonly median: number;
  /** standard uncertainty of its logarithm [-] */
  readonly sd: number;
}

/** One pull: the rig as a build, and the bracket of forces on the surface. */
export interface CalibrationPull {
  /** its gap, wheel friction and, with a prior of it, pull factor are what is looked for, those given don't count; with a measured leak the gap has no part in its force */
  readonly input: PredictInput;
  readonly direction: "straight-off" | "ceiling" | "along";
  /** weight that presses on the surface in a pull along a floor, 0 unless given [kg] */
  readonly rigMass?: number;
  /** largest force that held, the rig's own weight accounted for; 0 where it let go at once [N] */
  readonly held: number;
  /** smallest force that let go; null where the pull was stopped before [N] */
  readonly letGo: number | null;
}

/** One reading of a leak test with the same skirt on the same surface. */
export interface CalibrationLeak {
  /** openings: those alone that were open in the leak test */
  readonly input: { readonly skirt: SkirtInput; readonly air: Weather };
  /** suction in the cavity [Pa] */
  readonly pressure: number;
  /** [m³/s] */
  readonly flow: number;
}

export interface CalibrationRequest {
  /** gap [m], friction of the wheels [-], pull factor: null or absent, it is as each rig says [-] */
  readonly prior: {
    readonly gap: Belief;
    readonly friction: Belief;
    readonly pullFactor?: FactorBelief | null;
  };
  /** relative sd of a single pull: the middle of what is held likely, 0.05 unless given [-] */
  readonly scatter?: number;
  /** the same of a single flow reading, 0.05 unless given [-] */
  readonly leakScatter?: number;
  /** relative standard uncertainty that all flow readings share, the meter's, 0.03 unless given [-] */
  readonly meterUncertainty?: number;
  readonly pulls: readonly CalibrationPull[];
  readonly leaks?: readonly CalibrationLeak[];
}

/** Relative sd of a single pull or flow reading where none is stated [-]. Judgement. */
const USUAL_SCATTER = 0.05;
/** Relative standard uncertainty of a bleed plate's flow [-]. Source: docs/method/restriction.md, Holes. */
const USUAL_METER = 0.03;
/** A scatter beyond this is no measurement [-]. Judgement. */
const MOST_SCATTER = 1;

/** A request whose numbers were looked at, defaults filled in, pulls that say nothing left out. */
export interface Checked {
  readonly prior: CalibrationRequest["prior"];
  readonly scatter: number;
  readonly leakScatter: number;
  readonly meterUncertainty: number;
  readonly pulls: readonly CalibrationPull[];
  /** place of each of the pulls in the request [-] */
  readonly places: readonly number[];
  readonly leaks: readonly CalibrationLeak[];
}

function checkedBelief(path: string, belief: Belief): void {
  requireNonNegative(`${path}.mean`, belief.mean);
  requirePositive(`${path}.sd`, belief.sd);
}

function checkedScatter(path: string, scatter: number): number {
  if (!(scatter <= MOST_SCATTER))
    throw new OutOfRangeError(path, scatter, `greater than 0, up to ${MOST_SCATTER}`);
  return requirePositive(path, scatter);
}

function checkedMeter(uncertainty: number): number {
  if (!(uncertainty <= MOST_SCATTER))
    throw new OutOfRangeError("meterUncertainty", uncertainty, `0 up to ${MOST_SCATTER}`);
  return requireNonNegative("meterUncertainty", uncertainty);
}

function checkedPull(pull: CalibrationPull, path: string): void {
  const { held, letGo } = pull;
  requireNonNegative(`${path}.held`, held);
  requireNonNegative(`${path}.rigMass`, pull.rigMass ?? 0);
  if (letGo === null) return;
  requirePositive(`${path}.letGo`, letGo);
  if (held > letGo) throw new OutOfRangeError(`${path}.held`, held, `up to letGo, ${letGo}`);
}

/** @returns the request checked, defaults filled in @throws {OutOfRangeError} naming the number that can't be */
export function checkedRequest(request: CalibrationRequest): Checked {
  const { prior, pulls, leaks = [] } = request;
  checkedBelief("prior.gap", prior.gap);
  checkedBelief("prior.friction", prior.friction);
  if (prior.pullFactor) {
    requirePositive("prior.pullFactor.median", prior.pullFactor.median);
    requirePositive("prior.pullFactor.sd", prior.pullFactor.sd);
  }
  pulls.forEach((pull, i) => {
    checkedPull(pull, `pulls.${i}`);
  });
  leaks.forEach(({ pressure, flow }, i) => {
    requirePositive(`leaks.${i}.pressure`, pressure);
    requirePositive(`leaks.${i}.flow`, flow);
  });
  const places = pulls.flatMap(({ held, letGo }, i) => (held > 0 || letGo !== null ? [i] : []));
  return {
    prior,
    scatter: checkedScatter("scatter", request.scatter ?? USUAL_SCATTER),
    leakScatter: checkedScatter("leakScatter", request.leakScatter ?? USUAL_SCATTER),
    meterUncertainty: checkedMeter(request.meterUncertainty ?? USUAL_METER),
    pulls: places.map((i) => pulls[i]),
    places,
    leaks,
  };
}
