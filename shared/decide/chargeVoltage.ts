import { type CellLaw, cellAt, resistanceVaries } from "../physics/cells/cell.ts";
import { openCircuitVoltage } from "../physics/pack.ts";

const around = (charge: number, uncertainty: number) =>
  [Math.max(0, charge - uncertainty), Math.min(1, charge + uncertainty)] as const;

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
  const [low, high] = around(charge, uncertainty);
  const rise = openCircuitVoltage(curve, high) - openCircuitVoltage(curve, low);
  return high > low ? (rise / (high - low)) * uncertainty : 0;
}

/**
 * How a cell's resistance goes with its voltage at rest where the charge is what is uncertain.
 *
 *     d ln R/dV = ln(R(z + u)/R(z − u))/(V(z + u) − V(z − u)),  cut at empty and full
 *
 * @param cell - its curves [-, V, Ω]
 * @param charge - z [-]
 * @param uncertainty - standard, of z [-]
 * @returns d ln R/dV [1/V]; 0 where one resistance stands for every charge, or the voltage doesn't change
 *
 * Valid for a curve from 0 to 1. Source: JCGM 100:2008 (GUM), 5.1.3, by a difference over one standard uncertainty
 */
export function resistanceByVoltage(cell: CellLaw, charge: number, uncertainty: number): number {
  if (!resistanceVaries(cell)) return 0;
  const [low, high] = around(charge, uncertainty).map((z) => cellAt(cell, z));
  const rise = high.voltage - low.voltage;
  return rise > 0 && low.resistance > 0 ? Math.log(high.resistance / low.resistance) / rise : 0;
}
