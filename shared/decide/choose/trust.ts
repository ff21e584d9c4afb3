import { FLAG } from "./columns.ts";
import type { Family } from "./problem.ts";
import type { Trust } from "./result.ts";

/** Sizes closer than this count as the same [-]. */
const SAME = 1e-6;

/** Ratio to the value that lies nearest by ratio; null where there is none. */
function nearestRatio(value: number, tested: readonly number[]): number | null {
  const ratios = tested.map((one) => value / one);
  return ratios.reduce<number | null>(
    (best, ratio) => (best === null || Math.abs(Math.log(ratio)) < Math.abs(Math.log(best)) ? ratio : best),
    null,
  );
}

function speedRatioOf(tipSpeed: number, range: readonly [number, number] | null): number | null {
  if (range === null || !(tipSpeed > 0)) return null;
  const [least, most] = range;
  if (tipSpeed < least) return tipSpeed / least;
  return tipSpeed > most ? tipSpeed / most : 1;
}

/**
 * How far a combination rests on measurement.
 *
 *     D/D_tested of the nearest size, u/u_tested outside the tested speeds
 *
 * @param rotor - basis, tested sizes [m] and tip speeds [m/s]
 * @param diameter - D [m]
 * @param speed - ω, 0 where it stands [rad/s]
 * @param flags - of the combination, bits of FLAG [-]
 * @returns basis, scaled or not, ratios [-], extrapolated φ, cold winding
 *
 * Valid for rotors of one family. Source: docs/method/fan-laws.md
 */
export function trustOf(rotor: Family, diameter: number, speed: number, flags: number): Trust {
  const sizeRatio = nearestRatio(diameter, rotor.testedDiameters);
  return {
    basis: rotor.basis,
    scaled: sizeRatio !== null && Math.abs(sizeRatio - 1) > SAME,
    sizeRatio,
    speedRatio: speedRatioOf((speed * diameter) / 2, rotor.testedTipSpeeds),
    extrapolated: (flags & FLAG.extrapolated) !== 0,
    coldWinding: (flags & FLAG.coldWinding) !== 0,
  };
}
