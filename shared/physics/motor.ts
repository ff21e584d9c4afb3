import { OutOfRangeError, requireNonNegative, requirePositive } from "../numeric/errors.ts";

/** One equivalent DC machine: a brushless motor with its driver behaves as one. */
export interface MotorConstants {
  /** speed constant K_v [rpm/V] */
  readonly kv: number;
  /** winding resistance at 20 °C [Ω] */
  readonly resistance: number;
  /** M_c, the part of the friction that does not change with speed [N·m] */
  readonly frictionTorque: number;
  /** M_v, friction torque per speed [N·m·s/rad] */
  readonly viscousTorque: number;
}

/** One revolution per minute [rad/s]. Exact. */
export const RPM = (2 * Math.PI) / 60;

/**
 * Torque constant of a motor, which is also its back-EMF constant.
 *
 *     k_t = k_e = 60/(2π·K_v)
 *
 * @param kv - speed constant K_v [rpm/V], > 0
 * @returns k_t [N·m/A], the same number in [V·s/rad]
 * @throws {OutOfRangeError} on a K_v that is not finite and above 0
 *
 * Valid for the equivalent DC machine. Source: conservation of energy; common practice for K_v
 */
export function torqueConstant(kv: number): number {
  return 1 / (requirePositive("motor.kv", kv) * RPM);
}

/**
 * Speed constant that belongs to a torque constant, the inverse of {@link torqueConstant}.
 *
 *     K_v = 60/(2π·k_t)
 *
 * @param torquePerAmpere - k_t [N·m/A], > 0
 * @returns K_v [rpm/V]
 * @throws {OutOfRangeError} on a k_t that is not finite and above 0
 *
 * Valid and source: as {@link torqueConstant}
 */
export function speedConstant(torquePerAmpere: number): number {
  return 1 / (requirePositive("torqueConstant", torquePerAmpere) * RPM);
}

/**
 * Torque at the shaft.
 *
 *     M = k_t·I − M_c − M_v·ω
 *
 * @param motor - K_v [rpm/V], M_c [N·m], M_v [N·m·s/rad]
 * @param current - I of the winding [A]
 * @param speed - ω [rad/s]
 * @returns torque left for the rotor [N·m]; below 0 where friction takes more than the current gives
 * @throws {OutOfRangeError} on a K_v that is not finite and above 0
 *
 * Valid while turning forward. Source: equivalent DC machine; docs/method/motor.md
 */
export function shaftTorque(
  motor: Omit<MotorConstants, "resistance">,
  current: number,
  speed: number,
): number {
  return torqueConstant(motor.kv) * current - motor.frictionTorque - motor.viscousTorque * speed;
}

/**
 * Friction torque from a no-load current alone.
 *
 *     M_c = k_t·I₀,  M_v = 0
 *
 * @param kv - speed constant K_v [rpm/V], > 0
 * @param noLoadCurrent - I₀ [A], ≥ 0
 * @returns M_c [N·m]
 * @throws {OutOfRangeError} on a K_v that is not above 0, a negative or non-finite current
 *
 * Valid near the speed at which I₀ was read. Source: equivalent DC machine
 */
export function frictionFromNoLoad(kv: number, noLoadCurrent: number): number {
  return torqueConstant(kv) * requireNonNegative("noLoadCurrent", noLoadCurrent);
}

/**
 * Duty that a throttle command stands for.
 *
 *     δ = (c − c₀)/(1 − c₀), 0 up to c₀
 *
 * @param command - throttle c, 0…1 [-]
 * @param offset - c₀ from a sweep, 0 where none was seen, 0 ≤ c₀ < 1 [-]
 * @returns duty δ, the share of the pack's voltage [-]; exactly 0 for c ≤ c₀: the motor stands still
 * @throws {OutOfRangeError} on a command beyond 0…1, an offset beyond 0…1 or at 1
 *
 * Valid for speed controllers whose duty is linear in the command above the offset. Source: form fitted to sweeps; common practice, no source
 */
export function dutyFromCommand(command: number, offset: number): number {
  if (!(command >= 0 && command <= 1)) throw new OutOfRangeError("command", command, "0 to 1");
  const left = requireOffset(offset);
  return command <= offset ? 0 : (command - offset) / left;
}

/**
 * Throttle command that gives a duty, the inverse of {@link dutyFromCommand}.
 *
 *     c = c₀ + δ(1 − c₀)
 *
 * @param duty - δ, 0…1 [-]
 * @param offset - c₀ from a sweep, 0 where none was seen, 0 ≤ c₀ < 1 [-]
 * @returns command c [-]; c₀ at a duty of 0
 * @throws {OutOfRangeError} on a duty beyond 0…1, an offset beyond 0…1 or at 1
 *
 * Valid and source: as {@link dutyFromCommand}
 */
export function commandFromDuty(duty: number, offset: number): number {
  if (!(duty >= 0 && duty <= 1)) throw new OutOfRangeError("duty", duty, "0 to 1");
  return offset + duty * requireOffset(offset);
}

function requireOffset(offset: number): number {
  if (!(offset >= 0 && offset < 1)) throw new OutOfRangeError("offset", offset, "0 to below 1");
  return 1 - offset;
}
