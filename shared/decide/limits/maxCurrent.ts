import { timeToTemperature } from "../../physics/limits/heating.ts";
import { limitCurrent, steadyWindingTemperature } from "../../physics/winding.ts";
import type { LimitsInput } from "./input.ts";

/** A winding held at the greatest current that its maker allows. */
export interface AtMaxCurrent {
  /** [A] */
  readonly current: number;
  /** [K]; null where it never settles */
  readonly settlesAt: number | null;
  /** current from which on it never settles [A]; infinite where it sheds all its heat */
  readonly limitCurrent: number;
  /** from cold to the winding's limit [s]; null where it stays below, or limit or time constant isn't known */
  readonly timeToLimit: number | null;
}

function timeToLimit({ build, motor }: LimitsInput, current: number, thermalResistance: number) {
  const { resistance, thermalTimeConstant: timeConstant } = build.motor;
  const ambient = build.air.temperature;
  if (motor.windingLimit === null || !timeConstant) return null;
  if (motor.windingLimit <= ambient) return 0;
  const heated = { current, resistance20: resistance, thermalResistance, timeConstant, ambient };
  const time = timeToTemperature(heated, motor.windingLimit);
  return Number.isFinite(time) ? time : null;
}

/**
 * The winding at the maker's greatest current, held.
 *
 *     settled temperature and limit current by {@link steadyWindingTemperature}, time to the winding's limit by {@link timeToTemperature}
 *
 * @param input - greatest current [A] and winding limit [K] of the motor, R₂₀ [Ω], R_th [K/W], τ_th [s], air [K]
 * @returns currents [A], settled temperature [K], time from cold [s]; null where greatest current or R_th isn't known
 * @throws {OutOfRangeError} with the path of a number that can't be
 *
 * Valid at a fixed current, as under a current-limited driver or a blocked rotor. Source: docs/method/limits.md, Winding
 */
export function atMaxCurrent(input: LimitsInput): AtMaxCurrent | null {
  const { resistance, thermalResistance } = input.build.motor;
  const { maxCurrent } = input.motor;
  if (maxCurrent === null || thermalResistance === null) return null;
  const limit = limitCurrent(resistance, thermalResistance);
  return {
    current: maxCurrent,
    settlesAt:
      maxCurrent < limit
        ? steadyWindingTemperature(maxCurrent, resistance, thermalResistance, input.build.air.temperature)
        : null,
    limitCurrent: limit,
    timeToLimit: timeToLimit(input, maxCurrent, thermalResistance),
  };
}
