import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { Fluid } from "../air.ts";

export interface MeasuredLeak {
  /** C_L at the air of the test [m³/(s·Pa^x)] */
  readonly coefficient: number;
  /** x, 0.5…1 [-] */
  readonly exponent: number;
  /** of the air in the test [kg/m³] */
  readonly density: number;
  /** of the air in the test [Pa·s] */
  readonly viscosity: number;
}

/**
 * Leak coefficient at other air than that of the test.
 *
 *     C_L ∝ ρ^(x−1)·μ^(1−2x)
 *
 * @param leak - coefficient [m³/(s·Pa^x)], exponent [-], density [kg/m³] and viscosity [Pa·s] of the test
 * @param air - density [kg/m³], viscosity [Pa·s] now
 * @returns coefficient [m³/(s·Pa^x)]
 * @throws {OutOfRangeError} on an exponent beyond 0.5…1, any other number that is not finite and above 0
 *
 * Valid between pure turbulence (x = 0.5, no effect of μ) and pure laminar flow (x = 1, none of ρ).
 * Source: ISO 9972, ASTM E779 (from memory); dimensional reasoning in docs/method/restriction.md
 */
export function leakCoefficientAt(leak: MeasuredLeak, air: Fluid): number {
  const { exponent } = leak;
  if (!(exponent >= 0.5 && exponent <= 1))
    throw new OutOfRangeError("measuredLeak.exponent", exponent, "0.5 to 1");
  requirePositive("measuredLeak.coefficient", leak.coefficient);
  requirePositive("measuredLeak.density", leak.density);
  requirePositive("measuredLeak.viscosity", leak.viscosity);
  const density = requirePositive("air.density", air.density) / leak.density;
  const viscosity = requirePositive("air.viscosity", air.viscosity) / leak.viscosity;
  return leak.coefficient * density ** (exponent - 1) * viscosity ** (1 - 2 * exponent);
}

/**
 * Volume flow of a measured leak.
 *
 *     Q = C_L·Δp^x
 *
 * @param leak - coefficient [m³/(s·Pa^x)], exponent [-], density [kg/m³] and viscosity [Pa·s] of the test
 * @param air - density [kg/m³], viscosity [Pa·s] now
 * @param pressure - Δp across the skirt [Pa], ≥ 0
 * @returns flow Q [m³/s]
 * @throws {OutOfRangeError} as {@link leakCoefficientAt}, and on a negative or non-finite pressure
 *
 * Valid over the pressures of the leak test, a little beyond by extrapolation. Source: form of ISO 9972 and ASTM E779
 */
export function measuredLeakFlow(leak: MeasuredLeak, air: Fluid, pressure: number): number {
  requireNonNegative("pressure", pressure);
  return leakCoefficientAt(leak, air) * pressure ** leak.exponent;
}

/**
 * Pressure drop of a measured leak at a given flow, the inverse of {@link measuredLeakFlow}.
 *
 *     Δp = (Q/C_L)^(1/x)
 *
 * @param leak - coefficient [m³/(s·Pa^x)], exponent [-], density [kg/m³] and viscosity [Pa·s] of the test
 * @param air - density [kg/m³], viscosity [Pa·s] now
 * @param flow - volume flow [m³/s], ≥ 0
 * @returns Δp [Pa]
 * @throws {OutOfRangeError} as {@link leakCoefficientAt}, and on a negative or non-finite flow
 *
 * Valid and source: as {@link measuredLeakFlow}
 */
export function measuredLeakPressure(leak: MeasuredLeak, air: Fluid, flow: number): number {
  requireNonNegative("flow", flow);
  return (flow / leakCoefficientAt(leak, air)) ** (1 / leak.exponent);
}
