import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { Fluid } from "../air.ts";

export interface Opening {
  /** free area, A [m²] */
  readonly area: number;
  /** C_d, 0.61 unless given [-] */
  readonly dischargeCoefficient?: number;
}

/** Discharge coefficient of a sharp-edged opening [-]: Kirchhoff's 0.611 for a slit, 0.60 for a round hole. */
export const DEFAULT_DISCHARGE_COEFFICIENT = 0.61;

/**
 * Volume flow through an opening such as a wheel slot or a hole for wires.
 *
 *     Q = C_d·A·√(2Δp/ρ)
 *
 * @param opening - free area [m²], discharge coefficient [-]
 * @param air - density [kg/m³]
 * @param pressure - Δp across it [Pa], ≥ 0
 * @returns flow Q [m³/s]
 * @throws {OutOfRangeError} on a negative or non-finite input, a coefficient that is not above 0
 *
 * Valid for Δp below about 2 kPa (no expansibility) and Re above about 1000. Source: Torricelli, Weisbach; docs/method/restriction.md
 */
export function openingFlow(opening: Opening, air: Pick<Fluid, "density">, pressure: number): number {
  requireNonNegative("pressure", pressure);
  requirePositive("air.density", air.density);
  return effectiveArea(opening) * Math.sqrt((2 * pressure) / air.density);
}

/**
 * Pressure drop across an opening at a given flow, the inverse of {@link openingFlow}.
 *
 *     Δp = ½ρ·(Q/(C_d·A))²
 *
 * @param opening - free area, > 0 unless the flow is 0 [m²], discharge coefficient [-]
 * @param air - density [kg/m³]
 * @param flow - volume flow [m³/s], ≥ 0
 * @returns Δp [Pa]
 * @throws {OutOfRangeError} on a negative or non-finite input, a flow through no area
 *
 * Valid and source: as {@link openingFlow}
 */
export function openingPressure(opening: Opening, air: Pick<Fluid, "density">, flow: number): number {
  requireNonNegative("flow", flow);
  requirePositive("air.density", air.density);
  if (flow === 0) return 0;
  requirePositive("opening.area", opening.area);
  return 0.5 * air.density * (flow / effectiveArea(opening)) ** 2;
}

function effectiveArea(opening: Opening): number {
  requireNonNegative("opening.area", opening.area);
  const coefficient = opening.dischargeCoefficient ?? DEFAULT_DISCHARGE_COEFFICIENT;
  return opening.area * requirePositive("opening.dischargeCoefficient", coefficient);
}
