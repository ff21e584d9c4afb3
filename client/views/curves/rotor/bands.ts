import { studentQuantile } from "../../../../shared/numeric/student.ts";
import { type RotorFamily, readingsInUse } from "./family.ts";
import { curveVariance, informationOf } from "./information.ts";
import type { BandAt } from "./plots.ts";

/** Two-sided 95 %. */
const UPPER = 0.975;

/** @returns Student's t of a two-sided 95 % band */
export const bandQuantile = (dof: number): number => studentQuantile(UPPER, dof);

/** @returns weight of a reading like those that are there: their middle one */
export function typicalWeight(family: Pick<RotorFamily, "readings">): number {
  const weights = readingsInUse(family)
    .map((reading) => reading.weight)
    .sort((a, b) => a - b);
  return weights[Math.floor(weights.length / 2)] ?? 1;
}

/**
 * Half-widths of the 95 % bands of a family's curve.
 *
 *     mean: t·s·√(xᵀ(XᵀWX)⁻¹x);  next reading: t·s·√(1/w + xᵀ(XᵀWX)⁻¹x)
 *
 * @returns of ψ at φ; null everywhere where the points leave no residual
 */
export function bandsFor(family: RotorFamily): BandAt {
  const { fit } = family;
  const inverse = fit && informationOf(fit);
  if (!fit || !inverse) return () => null;
  const scale = bandQuantile(fit.dof) * fit.residualSd;
  const ofReading = 1 / typicalWeight(family);
  return (phi) => {
    const variance = Math.max(0, curveVariance(inverse, phi));
    return { mean: scale * Math.sqrt(variance), prediction: scale * Math.sqrt(ofReading + variance) };
  };
}

const PLACES = 60;

/** @returns largest half-width of the mean's band within the tested range, over ψ with no flow; null where nothing judges it */
export function sureness(family: RotorFamily, bandAt: BandAt): number | null {
  const { fit } = family;
  if (!fit || bandAt(fit.phiMin) === null) return null;
  let most = 0;
  for (let i = 0; i <= PLACES; i++) {
    const phi = fit.phiMin + ((fit.phiMax - fit.phiMin) * i) / PLACES;
    most = Math.max(most, bandAt(phi)?.mean ?? 0);
  }
  return most / fit.psi[0];
}
