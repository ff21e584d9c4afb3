import type { Rotor } from "../model/parts/rotor.ts";
import { type EstimatedRotor, estimatedRotor } from "../physics/fanlaws/estimate.ts";

/** @returns the curve that a rotor's geometry gives; null without one, and for axial rotors and propellers, to which the estimate doesn't apply */
export function drawnRotor({ kind, form, geometry, sizes }: Rotor): EstimatedRotor | null {
  if (!geometry || kind === "propeller" || form === "axial") return null;
  const { diameter } = sizes[0];
  return estimatedRotor({
    diameter,
    exitWidth: geometry.widthRatio * diameter,
    blades: geometry.bladeCount,
    bladeAngleDegrees: geometry.bladeExitAngle,
  });
}
