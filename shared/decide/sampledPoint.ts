import { assemble, suctionAt } from "../physics/assembly.ts";
import { type Pull, pullOf, rideHeightOf, rigidPull } from "../physics/hold/pull.ts";
import { arrivalPoint, crossingNear, operatingPoints } from "../physics/operatingPoint.ts";
import { type Followed, followCrossing } from "../physics/point/follow.ts";
import type { PredictInput } from "../physics/predict.ts";
import type { AnyPredictInput } from "../physics/predictAny.ts";
import { isPropeller } from "../physics/predictAny.ts";
import { predictPropeller } from "../physics/propeller.ts";
import { suctionByGap } from "../physics/pullByGap.ts";
import { isSealed } from "../physics/restriction/leak.ts";

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

function ducted(input: PredictInput): (into: SampledPoint) => void {
  const nominal = assemble(input);
  const first = arrivalPoint(operatingPoints(nominal.machine, nominal.leak));
  const from: Followed = {
    phi: first?.phi ?? 0,
    flow: 0,
    pressure: 0,
    winding: first?.windingResistance ?? input.motor.resistance,
    slope: 0,
  };
  const found = { ...from };
  if (from.phi > 0 && followCrossing(nominal.machine, nominal.leak, from, found)) from.slope = found.slope;
  return (into) => {
    const assembly = assemble(input);
    const { machine, leak } = assembly;
    const quick = from.phi > 0 && !isSealed(leak) && followCrossing(machine, leak, from, found);
    const point = quick ? found : crossingNear(machine, leak, from.phi);
    if (from.phi === 0 && point) from.phi = point.phi;
    if (!point) return write(into, rigidPull(0), Number.NaN, Number.NaN);
    const suction = suctionAt(input, assembly, point.pressure, point.flow);
    const rideHeight = rideHeightOf(input.vehicle, input.skirt.gap);
    const pull = rideHeight
      ? pullOf(suction, rideHeight, suctionByGap(input, assembly, point))
      : rigidPull(suction);
    write(into, pull, point.flow, point.pressure);
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
