import { answerOrNull } from "../../numeric/errors.ts";
import type { CellState } from "../cells/cell.ts";
import { WINDING_REFERENCE_TEMPERATURE } from "../constants.ts";
import { type Circuit, type MotorInput, type PackInput, packAt } from "../point/machine.ts";
import type { Balance } from "../point/speed.ts";
import type { Turning } from "../point/turning.ts";
import { steadyWindingTemperature, windingResistance } from "../winding.ts";

/** Circuit and state of a motor, as far as its throttle hangs on them. */
export interface KeptCircuit extends Pick<Circuit, "packResistance" | "torqueConstant"> {
  readonly supply: Omit<Circuit["supply"], "duty">;
}
export type KeptState = Pick<Balance, "current" | "speed" | "windingResistance">;

/** @returns voltage that the motor takes behind its speed controller, k_e·ω + I·(R_m + R_d) [V] */
export function voltageTaken({ supply, torqueConstant }: KeptCircuit, state: KeptState): number {
  return torqueConstant * state.speed + state.current * (state.windingResistance + supply.driverResistance);
}

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
export function keptDuty(circuit: KeptCircuit, voltage: number, state: KeptState): number | null {
  const { packResistance, supply } = circuit;
  const square = packResistance * state.current;
  const free = voltage - packResistance * supply.auxCurrent;
  const needed = voltageTaken(circuit, state);
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

/** What a controller keeps a rotor at: a turning that has torque. */
export interface Keeping extends Turning {
  /** with the motor's own friction, as a current [A] */
  readonly current: number;
}

/** A throttle and what the motor does there. */
export interface Throttled {
  readonly duty: number;
  readonly state: Balance;
}

/** What of a build a throttle hangs on. */
interface Driven {
  readonly motor: MotorInput;
  readonly pack: PackInput;
  readonly air: { readonly temperature: number };
}

/** @returns a turning with the current that its motor takes for it [A] */
export function keepingAt(turning: Turning, { motor }: Driven, circuit: Circuit): Keeping {
  const whole = turning.torque + motor.frictionTorque + motor.viscousTorque * turning.speed;
  return { ...turning, current: whole / circuit.torqueConstant };
}

/** @returns the throttle that keeps a rotor there, by state of the cells and winding temperature, settled unless given [K]; null where none does */
export function throttled(
  { motor, air, pack }: Driven,
  circuit: Circuit,
  { current, speed }: Keeping,
  cell: CellState,
  now: number | undefined,
): Throttled | null {
  const winding = windingUnder(motor, air.temperature, current, now);
  if (!winding) return null;
  const state = { ...winding, current, speed };
  const { openCircuitVoltage, packResistance } = packAt(pack, cell);
  const duty = keptDuty({ ...circuit, packResistance }, openCircuitVoltage, state);
  return duty === null ? null : { duty, state };
}
