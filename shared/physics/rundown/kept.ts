import { answerOrNull, NotEnoughDataError, OutOfRangeError } from "../../numeric/errors.ts";
import { type Assembly, assemble, suctionAt } from "../assembly.ts";
import { WINDING_REFERENCE_TEMPERATURE } from "../constants.ts";
import { pullOf, rideHeightOf, rigidPull } from "../hold/pull.ts";
import { arrivalPoint, operatingPoints } from "../operatingPoint.ts";
import { assembleMachine, type Circuit, type MotorInput } from "../point/machine.ts";
import type { Balance } from "../point/speed.ts";
import { type Turning, turningsFor } from "../point/turning.ts";
import { type PredictInput, predict } from "../predict.ts";
import { suctionByGap } from "../pullByGap.ts";
import { leakFlow } from "../restriction/leak.ts";
import { steadyWindingTemperature, windingResistance } from "../winding.ts";
import type { Draw } from "./drawn.ts";

/**
 * Throttle at which a motor of given current and speed runs from a pack.
 *
 *     R_b·I·δ² − (V_oc − R_b·I_aux)·δ + k_e·ω + I·(R_m + R_d) = 0, the smaller root
 *
 * @param circuit - R_b and R_d [Ω], I_aux [A], k_e [V·s/rad]
 * @param voltage - V_oc of the pack [V]
 * @param state - current I [A], ω [rad/s], R_m [Ω]
 * @returns δ [-], above 1 where full throttle is too little; null where no throttle does it
 *
 * Valid for a speed controller that averages; the larger root draws more for the same. Source: Kirchhoff's laws; docs/method/run-down.md
 */
export function keptDuty(
  circuit: Pick<Circuit, "packResistance" | "supply" | "torqueConstant">,
  voltage: number,
  state: { readonly current: number; readonly speed: number; readonly windingResistance: number },
): number | null {
  const { packResistance, supply, torqueConstant } = circuit;
  const { current, speed, windingResistance: winding } = state;
  const square = packResistance * current;
  const free = voltage - packResistance * supply.auxCurrent;
  const needed = torqueConstant * speed + current * (winding + supply.driverResistance);
  const root = free ** 2 - 4 * square * needed;
  if (!(free > 0 && root >= 0)) return null;
  // Of the two forms of the smaller root the one that loses no digits where R_b·I is small.
  return (2 * needed) / (free + Math.sqrt(root));
}

/** Current, winding and temperature under a torque: as given, settled in its own heat, or cold; null where it settles nowhere. */
function windingUnder(motor: MotorInput, ambient: number, current: number, now: number | undefined) {
  const { resistance, thermalResistance } = motor;
  const settled = () =>
    thermalResistance === null
      ? WINDING_REFERENCE_TEMPERATURE
      : answerOrNull(() => steadyWindingTemperature(current, resistance, thermalResistance, ambient));
  const windingTemperature = now ?? settled();
  if (windingTemperature === null) return null;
  return { windingTemperature, windingResistance: windingResistance(resistance, windingTemperature) };
}

function atDuty(input: PredictInput, duty: number, cellVoltage: number): PredictInput {
  const { supply, pack } = input;
  return { ...input, supply: { ...supply, duty }, pack: { ...pack, openCircuitVoltage: cellVoltage } };
}

function machineAt(
  input: PredictInput,
  { air }: Assembly,
  duty: number,
  cellVoltage: number,
  windingTemperature: number,
) {
  const { rotor, pack, supply } = atDuty(input, duty, cellVoltage);
  const motor = { ...input.motor, windingTemperature };
  return assembleMachine({ rotor, motor, pack, supply, air, ambient: input.air.temperature });
}

/** Where the fan settles at a throttle is where it is kept, within this [-]. */
const SAME_POINT = 1e-6;

/** What keeps a suction: a turning that has torque. */
interface Keeping extends Turning {
  /** with the motor's own friction, as a current [A] */
  readonly current: number;
}

/** A throttle and what the motor does there. */
interface Throttled {
  readonly duty: number;
  readonly state: Balance;
}

function throttled(
  { motor, air, pack }: PredictInput,
  { machine }: Assembly,
  { current, speed }: Keeping,
  cellVoltage: number,
  now: number | undefined,
): Throttled | null {
  const winding = windingUnder(motor, air.temperature, current, now);
  if (!winding) return null;
  const state = { ...winding, current, speed };
  const duty = keptDuty(machine, pack.series * cellVoltage, state);
  return duty === null ? null : { duty, state };
}

/** How the rotor turns to keep the suction: the slowest way at which the fan settles. */
function keepingOf(input: PredictInput, assembly: Assembly, pressure: number) {
  const { machine, leak, air } = assembly;
  const { motor, rotor, pack } = input;
  const flow = leakFlow(leak, air, pressure);
  const keepings = turningsFor(rotor, air, { flow, pressure }).map((turning): Keeping => {
    const { torque, speed } = turning;
    const whole = torque + motor.frictionTorque + motor.viscousTorque * speed;
    return { ...turning, current: whole / machine.torqueConstant };
  });
  const settles = (keeping: Keeping) => {
    const full = pack.openCircuitVoltage;
    const first = throttled(input, assembly, keeping, full, undefined);
    if (!first || first.duty > 1) return true;
    const now = machineAt(input, assembly, first.duty, full, first.state.windingTemperature);
    const there = arrivalPoint(operatingPoints(now, leak));
    return there !== null && Math.abs(there.pressure / pressure - 1) < SAME_POINT;
  };
  const keeping = keepings.find((each) => each.torque > 0 && settles(each));
  if (!keeping) throw unkept(keepings, pressure);
  return { keeping, flow };
}

/**
 * A build whose controller keeps its suction while it can, asked at falling voltages.
 *
 *     Q = Q_leak(Δp), φ and ω by {@link turningsFor}, I = (M_s + M_c + M_v·ω)/k_t, δ by {@link keptDuty};  full throttle where δ > 1 or there is none
 *
 * @param input - build at full throttle, its cell full [SI]
 * @param pressure - Δp to keep [Pa], > 0
 * @param full - the same build at full throttle all the time
 * @returns what it draws [A, rad/s, K, -] and how it pulls [Pa, N], by voltage [V] and winding temperature [K]
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
  const pullAt = ({ duty, state }: Throttled, cellVoltage: number) => {
    if (!rideHeight) return rigidPull(suction);
    const machine = machineAt(input, assembly, duty, cellVoltage, state.windingTemperature);
    const { windingResistance: winding } = state;
    const byGap = suctionByGap(input, { ...assembly, machine }, { phi, windingResistance: winding });
    return pullOf(suction, rideHeight, byGap);
  };
  return {
    circuit: full.circuit,
    at: (cellVoltage, now) => {
      const found = throttled(input, assembly, keeping, cellVoltage, now);
      if (!found || found.duty > 1)
        return { ...full.at(cellVoltage, now), duty: 1, spare: found ? 1 - found.duty : -1 };
      const pull = pullAt(found, cellVoltage);
      const { duty, state } = found;
      return { ...state, pressure, suction, pull, works: true, duty, spare: 1 - duty };
    },
    notesAt: (cellVoltage) => {
      const found = throttled(input, assembly, keeping, cellVoltage, undefined);
      return predict(atDuty(input, Math.min(1, found?.duty ?? 1), cellVoltage)).warnings;
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
