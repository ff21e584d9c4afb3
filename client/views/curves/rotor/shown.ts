import { type RotorBasis, testedAt } from "../../../../shared/book/rotorBasis.ts";
import { type Air, airFrom, type Weather } from "../../../../shared/physics/air.ts";
import { readingOf, tipSpeed } from "../../../../shared/physics/fanlaws/coefficients.ts";
import { RPM } from "../../../../shared/physics/motor.ts";
import { sizeLaw } from "../../../../shared/physics/point/sizeLaw.ts";
import { inUnit } from "../../../../shared/units/format.ts";
import { headed } from "../../../../shared/units/showing.ts";
import type { RotorFamily } from "./family.ts";

/** How the curve is looked at: in coefficients, or at a speed and size in some air. */
export type Shown =
  | { readonly as: "psi" | "lambda" | "efficiency" }
  | { readonly as: "pressure"; readonly rpm: number; readonly diameter: number; readonly weather: Weather };

export interface Units {
  readonly xLabel: string;
  readonly yLabel: string;
  /** φ → the x that is shown */
  readonly x: (phi: number) => number;
  /** ψ, λ or η → the y that is shown */
  readonly y: (value: number) => number;
  /** η₂/η₁ by which the pressure at another size is corrected; 1 at a tested size and in coefficients [-] */
  readonly sizeFactor: number;
}

const IN_COEFFICIENTS = {
  psi: "pressure coefficient ψ",
  lambda: "power coefficient λ",
  efficiency: "efficiency η, %",
} as const;

const PERCENT = 100;

/** The same correction for size that Match makes: none at a tested size or without shaft power. */
function sizeFactor(basis: RotorBasis, family: RotorFamily, diameter: number, rpm: number, air: Air): number {
  const correction = testedAt(basis, diameter);
  if (!correction || !basis.lambda) return 1;
  const curve = {
    diameter,
    psi: basis.psi,
    lambda: basis.lambda,
    phiMax: basis.phiMax,
    sizeCorrection: correction,
  };
  const end = family.phiFree ?? Number.POSITIVE_INFINITY;
  return sizeLaw(curve, end, air).factor(tipSpeed(diameter, rpm * RPM));
}

/** @returns how coefficients become what the axes show */
export function unitsOf(family: RotorFamily, shown: Shown): Units {
  if (shown.as !== "pressure")
    return {
      xLabel: "flow coefficient φ",
      yLabel: IN_COEFFICIENTS[shown.as],
      x: (phi) => phi,
      y: shown.as === "efficiency" ? (eta) => eta * PERCENT : (value) => value,
      sizeFactor: 1,
    };
  const { rpm, diameter, weather } = shown;
  const air = airFrom(weather);
  const one = readingOf(
    { phi: 1, psi: 1, lambda: null },
    { diameter, speed: rpm * RPM, density: air.density },
  );
  const { answer } = family;
  const factor = answer.basis === "missing" ? 1 : sizeFactor(answer, family, diameter, rpm, air);
  return {
    xLabel: headed("flow", "flow"),
    yLabel: headed("pressure", "pressure"),
    x: (phi) => inUnit(phi * one.flow, "flow"),
    y: (psi) => inUnit(psi * one.pressure * factor, "pressure"),
    sizeFactor: factor,
  };
}
