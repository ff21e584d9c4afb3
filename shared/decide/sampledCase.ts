import { type Air, airFrom } from "../physics/air.ts";
import type { PredictInput } from "../physics/assembly.ts";
import type { Crossing } from "../physics/operatingPoint.ts";
import { caseShare } from "../physics/point/caseShare.ts";
import { asFastCase, type FastCase, NOTHING_LEAKS, writeFastCase } from "../physics/point/fastCase.ts";
import { writeLeakAtGap } from "../physics/point/leakAtGap.ts";
import { assembleCircuit, type RotorInput } from "../physics/point/machine.ts";
import { fitsCase, isBeforeEnd, writeMachineCase } from "../physics/point/machineCase.ts";
import { solveSealedCase, solveWarmCase, WARM, WARM_RESULT } from "../physics/point/newtonWarm.ts";
import { meetsOnce } from "../physics/pullByGap.ts";
import { skirtLeak } from "../physics/skirt.ts";
import { suctionForce } from "../physics/suction.ts";
import { singleCrossing } from "./choose/singleCrossing.ts";

/** A ducted build as a case of the fast solvers, written anew from its present numbers. */
interface Sample {
  readonly input: PredictInput;
  readonly c: Float64Array;
  /** φ, w and ω of the build as stated, where every sample starts; whether its lip stands off */
  readonly nominal: Float64Array;
  lip: boolean;
  /** at the gap as set, at the gap solved last, and at the one being solved */
  readonly set: Float64Array;
  readonly last: Float64Array;
  readonly next: Float64Array;
  lastGap: number;
  fast: FastCase;
  air: Air;
  /** weather that the air is of */
  readonly weather: { temperature: number; pressure: number; humidity: number };
}

/** Half-width, relative to φ, in which a crossing counts as the next one on a curve that may have more. */
const NEAR = 0.25;

function writeAir(sample: Sample): void {
  const { weather } = sample;
  const { temperature, pressure, humidity } = sample.input.air;
  if (weather.temperature === temperature && weather.pressure === pressure && weather.humidity === humidity)
    return;
  sample.air = airFrom(sample.input.air);
  Object.assign(weather, { temperature, pressure, humidity });
}

/** @returns whether the build is a case: the motor turns, the leak is one that the fast solvers take */
function writeSample(sample: Sample): boolean {
  const { c, input } = sample;
  writeAir(sample);
  if (!writeMachineCase(c, input.rotor, assembleCircuit(input), input.air.temperature, sample.air))
    return false;
  const fast = asFastCase(skirtLeak(input.skirt, sample.air), sample.air);
  if (!fast) return false;
  sample.fast = fast;
  writeFastCase(c, fast);
  return leaks(c);
}

const leaks = (c: Float64Array): boolean =>
  c[WARM.gapArea] > 0 ||
  c[WARM.leakCoefficient] > 0 ||
  c[WARM.openingConductance] > 0 ||
  c[WARM.jointArea] > 0;

/** On the curve, falling through the leak's. */
const isCrossing = (c: Float64Array, solution: Float64Array): boolean =>
  solution[WARM_RESULT.slope] < 0 &&
  solution[WARM_RESULT.pressure] > 0 &&
  isBeforeEnd(c, solution[WARM_RESULT.phi]);

/** @returns whether the curve is proven to meet any leak once, so that the crossing found is the one whatever its place */
function hasOne({ psi, lambda, sizeCorrection }: RotorInput): boolean {
  const single = singleCrossing(psi, lambda);
  return single !== null && (!sizeCorrection || single.mostSizeSlope === Number.POSITIVE_INFINITY);
}

const isNear = (phi: number, start: number): boolean => Math.abs(phi - start) <= NEAR * start;

/** F_s of a solution, jet included [N]. */
function suctionOf(sample: Sample, solution: Float64Array, lip: boolean): number {
  const { c, air } = sample;
  const { skirt, vehicle } = sample.input;
  const overJoint = c[WARM.jointArea] > 0 && skirt.joint ? skirt.joint.span / skirt.perimeter : 0;
  return suctionForce({
    area: skirt.area,
    perimeter: skirt.perimeter,
    land: skirt.land,
    pressure: solution[WARM_RESULT.pressure],
    pullFactor: vehicle.pullFactor ?? 1,
    landShare: caseShare(c, solution, lip, overJoint),
    flow: solution[WARM_RESULT.flow],
    density: air.density,
    jetArea: vehicle.jetArea,
    jetAngleDegrees: vehicle.jetAngle,
  });
}

/** Solves at the gap as set. @returns whether the fast solvers found the crossing next to the nominal one */
function solveSet(sample: Sample): boolean {
  const { c, set, nominal } = sample;
  if (!writeSample(sample) || c[WARM.gapArea] > 0 !== sample.lip) return false;
  set.set(nominal);
  return (
    solveWarmCase(c, set) &&
    isCrossing(c, set) &&
    (isNear(set[WARM_RESULT.phi], nominal[WARM_RESULT.phi]) ||
      hasOne(sample.input.rotor) ||
      hasOne(sample.input.rotor))
  );
}

/** F_s at another gap, ≥ 0 [N]; NaN where the fast solvers have no sure answer. */
function suctionAtGap(sample: Sample, gap: number): number {
  const { c, set, last, next, input, fast } = sample;
  const { skirt } = input;
  if (!(skirt.gap + skirt.roughness > 0)) return Number.NaN;
  const isOff = writeLeakAtGap(c, fast, skirt, gap);
  next.set(Math.abs(gap - sample.lastGap) < Math.abs(gap - skirt.gap) ? last : set);
  const start = next[WARM_RESULT.phi];
  const lip = sample.lip && isOff;
  if (!lip) next[WARM_RESULT.gapVelocity] = next[WARM_RESULT.pressure];
  if (!leaks(c)) return solveSealedCase(c, next) ? suctionOf(sample, next, false) : Number.NaN;
  if (!(solveWarmCase(c, next) && isCrossing(c, next))) return Number.NaN;
  const phi = next[WARM_RESULT.phi];
  if (!isNear(phi, start) && !meetsOnce(input.rotor.psi, Math.max(phi, start))) return Number.NaN;
  if (isOff) {
    last.set(next);
    sample.lastGap = gap;
  }
  return suctionOf(sample, next, lip);
}

/** Where a lip's velocity or, without one, the pressure is at a crossing. */
function startAt(sample: Sample, { phi, speed, pressure }: Crossing): void {
  const { c, nominal, set } = sample;
  const laminar = c[WARM.gapLaminar];
  sample.lip = c[WARM.gapArea] > 0;
  nominal[WARM_RESULT.phi] = phi;
  nominal[WARM_RESULT.speed] = speed;
  nominal[WARM_RESULT.gapVelocity] = sample.lip
    ? (2 * pressure) / (laminar + Math.sqrt(laminar * laminar + 4 * c[WARM.gapInertia] * pressure))
    : pressure;
  if (solveSet(sample)) nominal.set(set);
}

/** The fast law of a build's pull. */
export interface SampledCase {
  /** pull as set, jet included [N], flow [m³/s] and pressure [Pa] of the present numbers; null where the general solver must be asked */
  readonly solved: () => {
    readonly suction: number;
    readonly flow: number;
    readonly pressure: number;
  } | null;
  /** F_s of the sample solved last by another gap [m] → [N]; NaN where the general solver must be asked */
  readonly at: (gap: number) => number;
}

/**
 * Makes the fast law of a build's pull by its present numbers.
 *
 *     the crossing next to the nominal one, by Newton's steps from there
 *
 * @param input - nominal at first; its numbers may be overwritten between two calls [SI]
 * @param nominal - its operating point
 * @param phiEnd - end of its curve [-]
 * @returns the law; null where no sample of the build has a fast answer
 * @throws {OutOfRangeError} on numbers that can't be
 *
 * Valid as {@link crossingNear}; a law holds until the input is overwritten. Source: docs/method/uncertainty.md
 */
export function sampledCase(input: PredictInput, nominal: Crossing, phiEnd: number): SampledCase | null {
  if (!(nominal.phi > 0) || !fitsCase(input.rotor)) return null;
  const room = () => new Float64Array(WARM_RESULT.length);
  const sample: Sample = {
    input,
    c: new Float64Array(WARM.length),
    nominal: room(),
    lip: false,
    set: room(),
    last: room(),
    next: room(),
    lastGap: Number.NaN,
    fast: NOTHING_LEAKS,
    air: airFrom(input.air),
    weather: { ...input.air },
  };
  sample.c[WARM.phiEnd] = phiEnd;
  if (!writeSample(sample)) return null;
  startAt(sample, nominal);
  const solved = () => {
    if (!solveSet(sample)) return null;
    sample.lastGap = Number.NaN;
    const { set } = sample;
    const suction = suctionOf(sample, set, sample.lip);
    return { suction, flow: set[WARM_RESULT.flow], pressure: set[WARM_RESULT.pressure] };
  };
  return { solved, at: (gap: number) => suctionAtGap(sample, gap) };
}
