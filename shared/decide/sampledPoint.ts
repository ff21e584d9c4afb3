import { type Assembly, assemble, suctionAt } from "../physics/assembly.ts";
import { type Pull, pullOf, rideHeightOf, rigidPull } from "../physics/hold/pull.ts";
import { type Crossing, crossingNear, operatingPoint, operatingPoints } from "../physics/operatingPoint.ts";
import { type Followed, followCrossing } from "../physics/point/follow.ts";
import type { PredictInput } from "../physics/predict.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import { isPropeller } from "../physics/predictAny.ts";
import { predictPropeller } from "../physics/propeller.ts";
import { suctionByGap } from "../physics/pullByGap.ts";
import { isSealed } from "../physics/restriction/leak.ts";
import { type SampledCase, sampledCase } from "./sampledCase.ts";

/** What a build's present numbers pull, and where. */
export interface SampledPoint {
  /** F_s, 0 where the rotor stands [N] */
  suction: number;
  /** Q [m³/s]; NaN where there is no such point */
  flow: number;
  /** Δp [Pa]; NaN where there is no such point */
  pressure: number;
  /** the suction as it presses on, giving where the running gear gives [N] */
  pull: Pull;
}

function write(into: SampledPoint, pull: Pull, flow: number, pressure: number): void {
  into.suction = pull.set;
  into.flow = flow;
  into.pressure = pressure;
  into.pull = pull;
}

/** @returns room for a sample */
export function emptyPoint(): SampledPoint {
  return { suction: 0, flow: Number.NaN, pressure: Number.NaN, pull: rigidPull(0) };
}

/** The general solver: the crossing next to the nominal one, by secants and, where they lead nowhere, by the scan. */
function followed(input: PredictInput, nominal: Assembly, first: Crossing | null) {
  const from: Followed = {
    phi: first?.phi ?? 0,
    flow: 0,
    pressure: 0,
    winding: first?.windingResistance ?? input.motor.resistance,
    slope: 0,
  };
  const found = { ...from };
  if (from.phi > 0 && followCrossing(nominal.machine, nominal.leak, from, found)) from.slope = found.slope;
  return (assembly: Assembly) => {
    const { machine, leak } = assembly;
    const quick = from.phi > 0 && !isSealed(leak) && followCrossing(machine, leak, from, found);
    const point = quick ? found : crossingNear(machine, leak, from.phi);
    if (from.phi === 0 && point) from.phi = point.phi;
    return point;
  };
}

/** A sample solved: as set, and by the stand-off [m] where that is asked for. */
interface Solved {
  readonly suction: number;
  readonly flow: number;
  readonly pressure: number;
  readonly byGap: (gap: number) => number;
}

function solvedGenerally(input: PredictInput, follow: ReturnType<typeof followed>): Solved | null {
  const assembly = assemble(input);
  const point = follow(assembly);
  if (!point) return null;
  const { pressure, flow } = point;
  const suction = suctionAt(input, assembly, pressure, flow);
  let law: Solved["byGap"] | null = null;
  const byGap = (gap: number) => {
    law ??= suctionByGap(input, assembly, point);
    return law(gap);
  };
  return { suction, flow, pressure, byGap };
}

/** The fast solvers where they take the sample; where one of its gaps has no fast answer, the general one there. */
function solvedQuickly(fast: SampledCase | null, generally: () => Solved | null): Solved | null {
  const solved = fast?.solved();
  if (!fast || !solved) return generally();
  let general: Solved | null = null;
  const byGap = (gap: number) => {
    const suction = fast.at(gap);
    if (!Number.isNaN(suction)) return suction;
    general ??= generally();
    return general?.byGap(gap) ?? 0;
  };
  return { ...solved, byGap };
}

function ducted(input: PredictInput): (into: SampledPoint) => void {
  const nominal = assemble(input);
  const first = operatingPoint(operatingPoints(nominal.machine, nominal.leak));
  const follow = followed(input, nominal, first);
  const fast = first && sampledCase(input, first, nominal.machine.phiEnd);
  return (into) => {
    const solved = solvedQuickly(fast, () => solvedGenerally(input, follow));
    if (!solved) return write(into, rigidPull(0), Number.NaN, Number.NaN);
    const { suction, flow, pressure, byGap } = solved;
    const rideHeight = rideHeightOf(input.vehicle, input.skirt.gap);
    write(into, rideHeight ? pullOf(suction, rideHeight, byGap) : rigidPull(suction), flow, pressure);
  };
}

/**
 * Makes the law of a build's pull by its present numbers, asked again after each change of them.
 *
 *     prediction in full, each operating point sought next to that of the nominal build
 *
 * @param build - nominal at first; its numbers may be overwritten between two calls [SI]
 * @returns writes suction and pull [N], flow [m³/s] and pressure [Pa] of the present numbers
 * @throws {OutOfRangeError} on numbers that can't be
 * @throws {NotEnoughDataError} where the rotor's curve has no end
 *
 * Valid as {@link predict}; a propeller has no flow and no pressure. Source: docs/method/uncertainty.md
 */
export function pointLaw(build: AnyPredictInput): (into: SampledPoint) => void {
  if (!isPropeller(build)) return ducted(build);
  return (into) => write(into, rigidPull(predictPropeller(build, []).suction), Number.NaN, Number.NaN);
}
