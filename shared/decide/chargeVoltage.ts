import { openCircuitVoltage } from "../physics/pack.ts";

/**
 * What an uncertain state of charge makes of a cell's voltage.
 *
 *     u(V) = u(z)·(V(z + u) − V(z − u))/2u,  cut at empty and full
 *
 * @param curve - points [charge, open-circuit voltage], by rising charge [-, V]
 * @param charge - z [-]
 * @param uncertainty - standard, of z [-]
 * @returns standard uncertainty of the open-circuit voltage [V]
 *
 * Valid for a curve from 0 to 1. Source: JCGM 100:2008 (GUM), 5.1.3, by a difference over one standard uncertainty
 */
export function chargeVoltage(
  curve: readonly (readonly [number, number])[],
  charge: number,
  uncertainty: number,
): number {
  const [low, high] = [Math.max(0, charge - uncertainty), Math.min(1, charge + uncertainty)];
  const rise = openCircuitVoltage(curve, high) - openCircuitVoltage(curve, low);
  return high > low ? (rise / (high - low)) * uncertainty : 0;
}
