import { readingOf } from "../../../../shared/physics/fanlaws/coefficients.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { inUnit } from "../../../../shared/units/format.ts";

/** How the curve is looked at: in coefficients, or at a speed and size in some air. */
export type Shown =
  | { readonly as: "psi" | "lambda" | "efficiency" }
  | { readonly as: "pressure"; readonly rpm: number; readonly diameter: number; readonly density: number };

export interface Units {
  readonly xLabel: string;
  readonly yLabel: string;
  /** φ → the x that is shown */
  readonly x: (phi: number) => number;
  /** ψ → the y that is shown (ψ or pressure) */
  readonly y: (psi: number) => number;
}

const IN_COEFFICIENTS = {
  psi: "pressure coefficient ψ",
  lambda: "power coefficient λ",
  efficiency: "efficiency η, %",
} as const;

const PERCENT = 100;

/** @returns how coefficients become what the axes show */
export function unitsOf(shown: Shown): Units {
  if (shown.as !== "pressure")
    return {
      xLabel: "flow coefficient φ",
      yLabel: IN_COEFFICIENTS[shown.as],
      x: (phi) => phi,
      y: shown.as === "efficiency" ? (eta) => eta * PERCENT : (value) => value,
    };
  const one = readingOf(
    { phi: 1, psi: 1, lambda: null },
    { diameter: shown.diameter, speed: shown.rpm * RPM, density: shown.density },
  );
  return {
    xLabel: "flow, L/s",
    yLabel: "pressure, Pa",
    x: (phi) => inUnit(phi * one.flow, "flow", "L/s"),
    y: (psi) => psi * one.pressure,
  };
}
