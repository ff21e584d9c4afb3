import { NotEnoughDataError, OutOfRangeError } from "../../numeric/errors.ts";
import { type Assembly, assemble, suctionAt } from "../assembly.ts";
import type { CellState } from "../cells/cell.ts";
import { pullOf, rideHeightOf, rigidPull } from "../hold/pull.ts";
import { operatingPoint, operatingPoints } from "../operatingPoint.ts";
import { assembleMachine } from "../point/machine.ts";
import { turningsFor } from "../point/turning.ts";
import { type PredictInput, predict } from "../predict.ts";
import { atCell } from "../predictAny.ts";
import { suctionByGap } from "../pullByGap.ts";
import { leakFlow } from "../restriction/leak.ts";
import type { Draw } from "./drawn.ts";
import { type Keeping, keepingAt, type Throttled, throttled } from "./throttled.ts";

function atDuty(input: PredictInput, duty: number, cell: CellState): PredictInput {
  return { ...atCell(input, cell), supply: { ...input.supply, duty } };
}

function machineAt(
  input: PredictInput,
  { air }: Assembly,
  duty: number,
  cell: CellState,
  windingTemperature: number,
) {
  const { rotor, pack, supply } = atDuty(input, duty, cell);
  const motor = { ...input.motor, windingTemperature };
  return assembleMachine({ rotor, motor, pack, supply, air, ambient: input.air.temperature });
}

/** Where the fan settles at a throttle is where it is kept, within this [-]. */
const SAME_POINT = 1e-6;

/**
 * How a rotor in a duct turns to keep a suction: the slowest way at which the fan settles.
 *
 *     Q = Q_leak(Δp), then {@link turningsFor}
 *
 * @param input - build at full throttle, its cell full [SI]
 * @param assembly - of the build
 * @param pressure - Δp to keep [Pa], > 0
 * @returns ω [rad/s], M [N·m] and I [A], with Q [m³/s]
 * @throws {OutOfRangeError} on a suction at which the fan would not settle: a stalled part of its curve
 * @throws {NotEnoughDataError} where the rotor's power at that flow isn't known
 *
 * Valid and source: as {@link keptDraw}
 */
export function keepingOf(input: PredictInput, assembly: Assembly, pressure: number) {
  const { machine, leak, air } = assembly;
  const { rotor, pack } = input;
  const flow = leakFlow(leak, air, pressure);
  const keepings = turningsFor(rotor, air, { flow, pressure }).map((turning) =>
    keepingAt(turning, input, machine),
  );
  const settles = (keeping: Keeping) => {
    const full = { voltage: pack.openCircuitVoltage, resistance: pack.cellResistance };
    const first = throttled(input, assembly.machine, keeping, full, undefined);
    if (!first || first.duty > 1) return true;
    const now = machineAt(input, assembly, first.duty, full, first.state.windingTemperature);
    const there = operatingPoint(operatingPoints(now, leak));
    return there !== null && Math.abs(there.pressure / pressure - 1) < SAME_POINT;
  };
  const keeping = keepings.find((each) => each.torque > 0 && settles(each));
  if (!keeping) throw unkept(keepings, pressure);
  return { keeping, flow };
}

/**
 * A build whose controller keeps its suction while it can, asked while its cells empty.
 *
 *     Q = Q_leak(Δp), φ and ω by {@link turningsFor}, I = (M_s + M_c + M_v·ω)/k_t, δ by `keptDuty`;  full throttle where δ > 1 or there is none
 *
 * @param input - build at full throttle, its cell full [SI]
 * @param pressure - Δp to keep [Pa], > 0
 * @param full - the same build at full throttle all the time
 * @returns what it draws [A, rad/s, K, -] and how it pulls [Pa, N], by the cells' state and winding temperature [K]
 * @throws {OutOfRangeError} on a suction at which the fan would not settle: a stalled part of its curve
 * @throws {NotEnoughDataError} where the rotor's power at that flow isn't known
 *
 * Valid for a controller that is quick beside the run. A gap that gives is judged at the momentary throttle. Source: docs/method/run-down.md
 */
export function keptDraw(input: PredictInput, pressure: number, full: Draw): Draw {
  const assembly = assemble(input);
  const { keeping, flow } = keepingOf(input, assembly, pressure);
  const suction = suctionAt(input, assembly, pressure, flow);
  const rideHeight = rideHeightOf(input.vehicle, input.skirt.gap);
  const phi = flow / (assembly.machine.area * assembly.machine.radius * keeping.speed);
  const pullAt = ({ duty, state }: Throttled, cell: CellState) => {
    if (!rideHeight) return rigidPull(suction);
    const machine = machineAt(input, assembly, duty, cell, state.windingTemperature);
    const { windingResistance: winding } = state;
    const byGap = suctionByGap(input, { ...assembly, machine }, { phi, windingResistance: winding });
    return pullOf(suction, rideHeight, byGap);
  };
  return {
    circuit: full.circuit,
    at: (cell, now) => {
      const found = throttled(input, assembly.machine, keeping, cell, now);
      if (!found || found.duty > 1)
        return { ...full.at(cell, now), duty: 1, spare: found ? 1 - found.duty : -1 };
      const pull = pullAt(found, cell);
      const { duty, state } = found;
      return { ...state, pressure, suction, pull, works: true, duty, spare: 1 - duty };
    },
    notesAt: (cell) => {
      const found = throttled(input, assembly.machine, keeping, cell, undefined);
      return predict(atDuty(input, Math.min(1, found?.duty ?? 1), cell)).warnings;
    },
  };
}

function unkept(keepings: readonly Keeping[], pressure: number): Error {
  if (keepings.some(({ torque }) => torque > 0))
    return new OutOfRangeError(
      "keep.pressure",
      pressure,
      "a suction at which the fan settles; at this one it stands in the stall of its curve",
    );
  return new NotEnoughDataError(
    "The rotor's power coefficient is 0 or below at the flow of the kept suction, so what it draws isn't known.",
    "Measure its power at that flow.",
    "rotor.lambda",
  );
}
