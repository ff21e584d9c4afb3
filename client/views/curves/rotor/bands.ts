import { rotorBands } from "../../../../shared/fit/rotorBands.ts";
import { studentQuantile } from "../../../../shared/numeric/student.ts";
import { type RotorFamily, readingsInUse } from "./family.ts";
import type { BandAt } from "./plots.ts";

/** Two-sided 95 %. */
const UPPER = 0.975;

/** @returns Student's t of a two-sided 95 % band */
export const bandQuantile = (dof: number): number => studentQuantile(UPPER, dof);

/** Readings within about this share of the flows that were tested say how precise another one there would be [-]. */
const REACH = 0.1;

/** @returns weight that one more reading at φ would have in the fit: the readings' variances averaged, near ones counting most */
export function weightNear(family: Pick<RotorFamily, "readings">): (phi: number) => number {
  const used = readingsInUse(family);
  const phis = used.map((reading) => reading.phi);
  const reach = REACH * (Math.max(...phis) - Math.min(...phis)) || 1;
  return (phi) => {
    const nearest = Math.min(...phis.map((each) => Math.abs(each - phi)));
    let [near, variance] = [0, 0];
    for (const reading of used) {
      const distance = Math.abs(reading.phi - phi) / reach;
      const counts = Math.exp(((nearest / reach) ** 2 - distance ** 2) / 2);
      near += counts;
      variance += counts / reading.weight;
    }
    return near > 0 ? near / variance : 1;
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
