import { requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { Fluid } from "../air.ts";
import type { RestrictionLaw } from "./law.ts";

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

/** An opening, as a restriction. */
export const openingLaw: RestrictionLaw<Opening> = {
  flow: openingFlow,
  slope: (opening, air, pressure) => openingFlow(opening, air, pressure) / (2 * pressure),
  isOpen: ({ area }) => area > 0,
  underLip: null,
  air: ["density"],
  words: {
    name: "opening",
    equation: "Q = C_d·A·√(2Δp/ρ)",
    numbers: {
      area: ["A", "area", "m²"],
      dischargeCoefficient: ["C_d", "discharge coefficient, 0.61 unless given", ""],
    },
    velocity: null,
    source: "Torricelli, Weisbach; docs/method/restriction.md",
  },
  notes: null,
};

/** @returns C_d·A [m²] @throws {OutOfRangeError} on an area below 0, a coefficient that is not above 0 */
export function effectiveArea(opening: Opening): number {
  requireNonNegative("opening.area", opening.area);
  const coefficient = opening.dischargeCoefficient ?? DEFAULT_DISCHARGE_COEFFICIENT;
  return opening.area * requirePositive("opening.dischargeCoefficient", coefficient);
}
