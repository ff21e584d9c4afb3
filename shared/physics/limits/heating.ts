import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import { COPPER_TEMPERATURE_COEFFICIENT, WINDING_REFERENCE_TEMPERATURE } from "../constants.ts";

/** A winding of copper that a constant current warms. */
export interface Heated {
  /** I, root mean square [A] */
  readonly current: number;
  /** R₂₀ [Ω] */
  readonly resistance20: number;
  /** R_th, winding to air [K/W] */
  readonly thermalResistance: number;
  /** τ_th [s] */
  readonly timeConstant: number;
  /** T_a, where it starts from [K] */
  readonly ambient: number;
}

interface Warming {
  /** rise that the cold winding's heat would settle at [K] */
  readonly drive: number;
  /** 1 − q·α: what the growing resistance leaves of the cooling; 0 or less: it runs away [-] */
  readonly cooling: number;
}

/** q = R_th·I²·R₂₀;  τ·dΔT/dt = q(1 + α(T_a − T₂₀)) − (1 − qα)·ΔT. */
function warmingOf({ current, resistance20, thermalResistance, timeConstant, ambient }: Heated): Warming {
  requirePositive("motor.resistance", resistance20);
  requirePositive("motor.thermalTimeConstant", timeConstant);
  requirePositive("ambient", ambient);
  const heat =
    requireNonNegative("motor.thermalResistance", thermalResistance) *
    requireNonNegative("current", Math.abs(current)) ** 2 *
    resistance20;
  const cold = 1 + COPPER_TEMPERATURE_COEFFICIENT * (ambient - WINDING_REFERENCE_TEMPERATURE);
  return { drive: heat * cold, cooling: 1 - heat * COPPER_TEMPERATURE_COEFFICIENT };
}

/**
 * Time that a constant current takes to warm a cold winding to a temperature.
 *
 *     t = −(τ/c)·ln(1 − c·(T − T_a)/a),  a = q[1 + α(T_a − 20 °C)],  c = 1 − q·α,  q = R_th·I²·R₂₀
 *
 * @param heated - current [A], R₂₀ [Ω], R_th [K/W], τ_th [s], T_a [K]
 * @param temperature - T to reach [K], at or above T_a
 * @returns t [s]; infinite where the winding settles at or below T
 * @throws {OutOfRangeError} on a temperature below T_a, a number that is not finite or out of its range
 *
 * Valid for one heat store (the winding's own resistance to the can is inside R_th) at a fixed current; at a fixed voltage a hot winding draws less.
 * Source: τ·dΔT/dt = I²·R(T)·R_th − ΔT, solved; docs/method/limits.md, Winding
 */
export function timeToTemperature(heated: Heated, temperature: number): number {
  const { drive, cooling } = warmingOf(heated);
  const rise = temperature - heated.ambient;
  if (!(rise >= 0 && rise < Number.POSITIVE_INFINITY))
    throw new OutOfRangeError("temperature", temperature, `${heated.ambient} or above`);
  if (rise === 0) return 0;
  if (cooling * rise >= drive) return Number.POSITIVE_INFINITY;
  if (cooling === 0) return (heated.timeConstant * rise) / drive;
  return (-heated.timeConstant / cooling) * Math.log1p((-cooling * rise) / drive);
}
