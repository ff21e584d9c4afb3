import { OutOfRangeError, requireNonNegative, requirePositive } from "../numeric/errors.ts";
import { COPPER_TEMPERATURE_COEFFICIENT, WINDING_REFERENCE_TEMPERATURE } from "./constants.ts";

/**
 * Resistance of a copper winding at its temperature.
 *
 *     R = R₂₀·[1 + 0.00393 (T − 293.15 K)]
 *
 * @param resistance20 - R₂₀, at 20 °C [Ω], > 0
 * @param temperature - T of the winding [K]
 * @returns R [Ω]
 * @throws {OutOfRangeError} on a resistance or temperature that is not above 0, a temperature at which R would be 0 or less
 *
 * Valid for −60…200 °C. Source: IEC 60028
 */
export function windingResistance(resistance20: number, temperature: number): number {
  requirePositive("motor.resistance", resistance20);
  requirePositive("winding.temperature", temperature);
  const rise = temperature - WINDING_REFERENCE_TEMPERATURE;
  const factor = 1 + COPPER_TEMPERATURE_COEFFICIENT * rise;
  if (!(factor > 0))
    throw new OutOfRangeError("winding.temperature", temperature, "above 38.7 K, where the line meets 0 Ω");
  return resistance20 * factor;
}

/**
 * Temperature that a winding settles at under a constant current.
 *
 *     T = [T_a + R_th·I²·R₂₀(1 − α·293.15 K)]/(1 − R_th·I²·R₂₀·α),  α = 0.00393/K
 *
 * @param current - I, root mean square [A]
 * @param resistance20 - R₂₀, at 20 °C [Ω], > 0
 * @param thermalResistance - R_th, winding to air [K/W], ≥ 0
 * @param ambient - T_a [K], > 0
 * @returns T [K]
 * @throws {OutOfRangeError} on a current at or above {@link limitCurrent}, where the winding runs away; on a number out of its range
 *
 * Valid at a fixed current; at a fixed voltage a hot winding draws less. Source: T = T_a + R_th·I²·R(T), solved
 */
export function steadyWindingTemperature(
  current: number,
  resistance20: number,
  thermalResistance: number,
  ambient: number,
): number {
  requirePositive("ambient", ambient);
  const limit = limitCurrent(resistance20, thermalResistance);
  if (!(Math.abs(current) < limit))
    throw new OutOfRangeError("current", current, `below ${limit}, where the winding runs away`);
  const heat = thermalResistance * current ** 2 * resistance20;
  const atZeroKelvin = 1 - COPPER_TEMPERATURE_COEFFICIENT * WINDING_REFERENCE_TEMPERATURE;
  return (ambient + heat * atZeroKelvin) / (1 - heat * COPPER_TEMPERATURE_COEFFICIENT);
}

/**
 * Current from which on a winding finds no steady temperature.
 *
 *     I_lim = 1/√(R_th·R₂₀·α)
 *
 * @param resistance20 - R₂₀, at 20 °C [Ω], > 0
 * @param thermalResistance - R_th, winding to air [K/W], ≥ 0
 * @returns I_lim [A]; infinite at R_th = 0
 * @throws {OutOfRangeError} on a resistance that is not above 0, a negative or non-finite R_th
 *
 * Valid for copper; far above what any insulation stands. Source: zero of the denominator of {@link steadyWindingTemperature}
 */
export function limitCurrent(resistance20: number, thermalResistance: number): number {
  requirePositive("motor.resistance", resistance20);
  requireNonNegative("motor.thermalResistance", thermalResistance);
  return 1 / Math.sqrt(thermalResistance * resistance20 * COPPER_TEMPERATURE_COEFFICIENT);
}

/** How a winding warms at a given current, in closed form. */
export interface Warming {
  /** R_m without a current, or as it stands where it doesn't warm [Ω] */
  readonly winding: number;
  /** R₂₀·α·R_th; 0: its temperature doesn't follow the current [1/A²] */
  readonly heating: number;
}

/**
 * How a motor's winding warms with its current.
 *
 *     R_m = R_a/(1 − R₂₀·α·R_th·I²)
 *
 * @param motor - R₂₀ [Ω], R_th [K/W], null where it is taken cold; its temperature at this moment where that is given [K]
 * @param ambient - of the air [K]
 * @returns R_a [Ω] and R₂₀·α·R_th [1/A²]
 * @throws {OutOfRangeError} as {@link windingResistance}, on a negative R_th
 *
 * Valid below {@link limitCurrent}. Source: as {@link steadyWindingTemperature}
 */
export function warmingOf(
  motor: {
    readonly resistance: number;
    readonly thermalResistance: number | null;
    readonly windingTemperature?: number;
  },
  ambient: number,
): Warming {
  const { resistance, thermalResistance, windingTemperature } = motor;
  if (windingTemperature !== undefined)
    return { winding: windingResistance(resistance, windingTemperature), heating: 0 };
  if (thermalResistance === null)
    return { winding: requirePositive("motor.resistance", resistance), heating: 0 };
  const rise = requireNonNegative("motor.thermalResistance", thermalResistance);
  return {
    winding: windingResistance(resistance, ambient),
    heating: resistance * COPPER_TEMPERATURE_COEFFICIENT * rise,
  };
}

/** Heat transfer from a small can to moving air by convection and radiation [W/(m²·K)]. Common practice, no source. */
export const CAN_HEAT_TRANSFER = 15;

/**
 * Thermal resistance of a motor from the surface of its can: an estimate, no measurement.
 *
 *     R_th = 1/(h·A),  A = π·D·L + π·D²/2,  h = 15 W/(m²·K)
 *
 * @param canDiameter - D [m], > 0
 * @param canLength - L [m], > 0
 * @returns R_th [K/W], always marked as estimated [-]
 * @throws {OutOfRangeError} on a dimension that is not finite and above 0
 *
 * Valid within a factor of two; the winding itself is hotter than the can. Source: Newton's law of cooling; h is common practice, no source
 */
export function estimateThermalResistance(
  canDiameter: number,
  canLength: number,
): { readonly thermalResistance: number; readonly estimated: true } {
  requirePositive("motor.canDiameter", canDiameter);
  requirePositive("motor.canLength", canLength);
  const surface = Math.PI * canDiameter * canLength + (Math.PI * canDiameter ** 2) / 2;
  return { thermalResistance: 1 / (CAN_HEAT_TRANSFER * surface), estimated: true };
}
