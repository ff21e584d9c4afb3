import { OutOfRangeError, requireFinite, requireNonNegative, requirePositive } from "../numeric/errors.ts";

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
 * Torque of a motor held still.
 *
 *     M_stall = k_t·V/R_m − M_c
 *
 * @param motor - K_v [rpm/V], resistance [Ω], M_c [N·m]
 * @param voltage - at the motor [V], ≥ 0
 * @returns stall torque [N·m], 0 where friction alone is stronger
 * @throws {OutOfRangeError} on a K_v or resistance that is not above 0, a negative voltage
 *
 * Valid cold and for a moment only: a stalled motor burns. Source: equivalent DC machine
 */
export function stallTorque(motor: Omit<MotorConstants, "viscousTorque">, voltage: number): number {
  const current =
    requireNonNegative("voltage", voltage) / requirePositive("motor.resistance", motor.resistance);
  return Math.max(0, torqueConstant(motor.kv) * current - motor.frictionTorque);
}

/**
 * Share of the current at which a motor with a constant no-load current is most efficient.
 *
 *     I_opt = √(I₀·I_s),  I_s = V/R_m
 *
 * @param voltage - at the motor [V], > 0
 * @param resistance - of the winding [Ω], > 0
 * @param noLoadCurrent - I₀ [A], 0 < I₀ < I_s
 * @returns current of best efficiency [A]
 * @throws {OutOfRangeError} on a number that is not above 0; a no-load current that the stalled motor doesn't reach
 *
 * Valid for M_v = 0. Source: maximum of (1 − I/I_s)(1 − I₀/I)
 */
export function bestEfficiencyCurrent(voltage: number, resistance: number, noLoadCurrent: number): number {
  return Math.sqrt(
    requirePositive("noLoadCurrent", noLoadCurrent) * stallCurrent(voltage, resistance, noLoadCurrent),
  );
}

/**
 * Efficiency of a motor with a constant no-load current.
 *
 *     η = (1 − I/I_s)(1 − I₀/I),  I_s = V/R_m
 *
 * @param voltage - at the motor [V], > 0
 * @param resistance - of the winding [Ω], > 0
 * @param noLoadCurrent - I₀ [A], ≥ 0
 * @param current - I [A], I₀ ≤ I ≤ I_s
 * @returns shaft power over electrical power [-]
 * @throws {OutOfRangeError} on a current outside I₀…I_s, a number that is not above 0
 *
 * Valid for M_v = 0. Source: equivalent DC machine
 */
export function motorEfficiency(
  voltage: number,
  resistance: number,
  noLoadCurrent: number,
  current: number,
): number {
  const most = stallCurrent(voltage, resistance, noLoadCurrent);
  if (!(current >= noLoadCurrent && current <= most && current > 0))
    throw new OutOfRangeError("current", current, `above 0, ${noLoadCurrent} to ${most}`);
  return (1 - current / most) * (1 - noLoadCurrent / current);
}

function stallCurrent(voltage: number, resistance: number, noLoadCurrent: number): number {
  requireNonNegative("noLoadCurrent", noLoadCurrent);
  const most = requirePositive("voltage", voltage) / requirePositive("resistance", resistance);
  if (!(noLoadCurrent < most))
    throw new OutOfRangeError("noLoadCurrent", noLoadCurrent, `below the stall current, ${most}`);
  return most;
}

/**
 * The share of the pack's voltage that a throttle command stands for.
 *
 *     δ = (c − c₀)/(1 − c₀), 0 up to c₀
 *
 * @param command - throttle c, 0…1 [-]
 * @param offset - c₀ from a sweep, 0 where none was seen, 0 ≤ c₀ < 1 [-]
 * @returns duty δ [-]; exactly 0 for c ≤ c₀: the motor stands
 * @throws {OutOfRangeError} on a command beyond 0…1, an offset beyond 0…1 or at 1
 *
 * Valid for drivers whose duty is linear above the offset. Source: form fitted to sweeps; common practice, no source
 */
export function rotorDutyFromCommand(command: number, offset = 0): number {
  if (!(command >= 0 && command <= 1)) throw new OutOfRangeError("command", command, "0 to 1");
  if (!(offset >= 0 && offset < 1)) throw new OutOfRangeError("offset", offset, "0 to below 1");
  return command <= offset ? 0 : (command - offset) / (1 - offset);
}

/**
 * Speed of the unloaded motor.
 *
 *     ω₀ = (V − R_m·M_c/k_t)/(k_e + R_m·M_v/k_t)
 *
 * @param motor - K_v [rpm/V], resistance [Ω], M_c [N·m], M_v [N·m·s/rad]
 * @param voltage - at the motor [V]
 * @returns ω₀ [rad/s], 0 where it can't overcome its own friction
 * @throws {OutOfRangeError} on a K_v that is not above 0, a voltage that is not finite
 *
 * Valid cold. Source: equivalent DC machine with M = 0
 */
export function noLoadSpeed(motor: MotorConstants, voltage: number): number {
  const k = torqueConstant(motor.kv);
  const left = requireFinite("voltage", voltage) - (motor.resistance * motor.frictionTorque) / k;
  return Math.max(0, left / (k + (motor.resistance * motor.viscousTorque) / k));
}
