import { rotorBands } from "../../../../shared/bench/rotorBands.ts";
import { studentQuantile } from "../../../../shared/numeric/student.ts";
import { type RotorFamily, readingsInUse } from "./family.ts";
import type { BandAt } from "./plots.ts";

/** Two-sided 95 %. */
const UPPER = 0.975;

/** @returns Student's t of a two-sided 95 % band */
export const bandQuantile = (dof: number): number => studentQuantile(UPPER, dof);

/** So many readings round a flow say how precise another one there would be. */
const NEIGHBOURS = 5;

/** @returns weight that one more reading at φ would have in the fit: that of its neighbours, their variances averaged */
export function weightNear(family: Pick<RotorFamily, "readings">): (phi: number) => number {
  const used = readingsInUse(family);
  return (phi) => {
    const near = [...used].sort((a, b) => Math.abs(a.phi - phi) - Math.abs(b.phi - phi)).slice(0, NEIGHBOURS);
    if (near.length === 0) return 1;
    return near.length / near.reduce((sum, reading) => sum + 1 / reading.weight, 0);
  };
}

/** @returns half-widths of the 95 % bands of ψ at φ, the next reading taken to be as precise as its neighbours; null where the points leave no residual */
export function bandsFor(family: RotorFamily): BandAt {
  const { fit } = family;
  if (!fit || fit.covariance.length === 0) return () => null;
  const weight = weightNear(family);
  return (phi) => {
    const bands = rotorBands({ ...fit, residualSd: fit.residualSd / Math.sqrt(weight(phi)) }, phi);
    return (
      bands && {
        mean: (bands.mean.high - bands.mean.low) / 2,
        prediction: (bands.prediction.high - bands.prediction.low) / 2,
      }
    );
  };
}

/** @returns residual sd of the readings as they stand, each counting alike, over ψ with no flow; the fit's own is that of a reading of weight 1 */
export function plainResidualSd(family: RotorFamily): number | null {
  const { fit } = family;
  if (!fit || !(fit.dof > 0)) return null;
  const sum = readingsInUse(family).reduce((total, { residual }) => total + (residual ?? 0) ** 2, 0);
  return Math.sqrt(sum / fit.dof);
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
