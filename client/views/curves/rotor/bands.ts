import { rotorBands } from "../../../../shared/bench/rotorBands.ts";
import { studentQuantile } from "../../../../shared/numeric/student.ts";
import { type RotorFamily, readingsInUse } from "./family.ts";
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

/** @returns residual sd of ψ of a reading like those that are there; the fit's own is that of a reading of weight 1 */
export function typicalSd(family: RotorFamily): number {
  return (family.fit?.residualSd ?? 0) / Math.sqrt(typicalWeight(family));
}

/** @returns half-widths of the 95 % bands of ψ at φ, the next reading taken to be like those that are there; null where the points leave no residual */
export function bandsFor(family: RotorFamily): BandAt {
  const { fit } = family;
  if (!fit || fit.covariance.length === 0) return () => null;
  const judged = { ...fit, residualSd: typicalSd(family) };
  return (phi) => {
    const bands = rotorBands(judged, phi);
    return (
      bands && {
        mean: (bands.mean.high - bands.mean.low) / 2,
        prediction: (bands.prediction.high - bands.prediction.low) / 2,
      }
    );
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
