import { NotEnoughDataError, requireNonNegative, requirePositive } from "../numeric/errors.ts";

export interface WeighRequest {
  /** readings of the scale [kg] */
  readonly masses: readonly number[];
  /** standard uncertainty of the scale that differs from reading to reading; 0 unless given [kg] */
  readonly fixed?: number;
  /** standard uncertainty that all readings share, as a share of them; 0 unless given [-] */
  readonly share?: number;
}

export interface Weighed {
  /** mean of the readings [kg] */
  readonly mass: number;
  /** standard; null where one reading alone and no instrument says anything of it [kg] */
  readonly uncertainty: number | null;
}

/**
 * Mass of what was weighed, once or several times.
 *
 *     m = mean;  u²(m) = max(s², u_fixed²)/n + (share·m)²,  s the readings' own scatter
 *
 * @param request - readings [kg], the scale's uncertainty: fixed part [kg], shared part [-]
 * @returns mean and its standard uncertainty [kg]
 * @throws {OutOfRangeError} on a reading that is not above 0, an uncertainty below 0
 * @throws {NotEnoughDataError} without a reading
 *
 * Valid for readings of the same thing on the same scale, taken off between them. Source: JCGM 100:2008, 4.2 (mean and scatter), 5.1.2 (their sum with the scale's)
 */
export function fitWeighing({ masses, fixed = 0, share = 0 }: WeighRequest): Weighed {
  const count = masses.length;
  if (count === 0) throw new NotEnoughDataError("no reading", "Type a first reading of the scale.");
  requireNonNegative("fixed", fixed);
  requireNonNegative("share", share);
  masses.forEach((mass, i) => {
    requirePositive(`masses.${i}`, mass);
  });
  const mass = masses.reduce((sum, each) => sum + each, 0) / count;
  const squares = masses.reduce((sum, each) => sum + (each - mass) ** 2, 0);
  const scatter = count > 1 ? squares / (count - 1) : 0;
  if (count === 1 && fixed === 0 && share === 0) return { mass, uncertainty: null };
  return { mass, uncertainty: Math.sqrt(Math.max(scatter, fixed ** 2) / count + (share * mass) ** 2) };
}
