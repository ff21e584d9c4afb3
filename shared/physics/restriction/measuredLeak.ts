import { OutOfRangeError, requireNonNegative, requirePositive } from "../../numeric/errors.ts";
import type { Fluid } from "../air.ts";
import type { RestrictionLaw } from "./law.ts";

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
  if (density === 1 && viscosity === 1) return leak.coefficient;
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

/** A measured leak in the place of a stretch of lip. */
export interface MeasuredLip extends MeasuredLeak {
  /** length of lip that it stands for [m] */
  readonly perimeter: number;
}

/** A measured leak, as a restriction. */
export const measuredLeakLaw: RestrictionLaw<MeasuredLip> = {
  flow: measuredLeakFlow,
  slope: (leak, air, pressure) => (leak.exponent * measuredLeakFlow(leak, air, pressure)) / pressure,
  isOpen: ({ coefficient }) => coefficient > 0,
  underLip: {
    length: ({ perimeter }) => perimeter,
    frictionDrop: ({ exponent }, _air, pressure) => (2 - 1 / exponent) * pressure,
    shareWords: ({ exponent }) => `σ = 1/(2x),  x = ${exponent.toPrecision(3)} of the leak test`,
  },
  air: ["density", "viscosity"],
  words: {
    name: "measured leak",
    equation: "Q = C_L·Δp^x,  C_L ∝ ρ^(x−1)·μ^(1−2x)",
    numbers: {
      coefficient: ["C_L", "from leak tests, at this air", "m³/(s·Pa^x)"],
      exponent: ["x", "from leak tests", ""],
    },
    velocity: null,
    source: "form of ISO 9972 and ASTM E779, fitted to the leak tests; docs/method/restriction.md",
  },
  notes: null,
};
