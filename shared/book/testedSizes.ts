import { tipSpeed } from "../physics/fanlaws/coefficients.ts";
import { RPM } from "../physics/motor.ts";
import type { TestedAt } from "../physics/point/sizeLaw.ts";

/** Relative difference below which two diameters are one size. */
const SAME_SIZE = 1e-3;

/** @returns whether two diameters are one size [m] */
export const isSameSize = (a: number, b: number): boolean => Math.abs(a / b - 1) < SAME_SIZE;

/** @returns of the tested sizes the one nearest in proportion; null where none was tested */
export function nearestSize<T extends { readonly testedDiameter: number }>(
  sizes: readonly T[],
  diameter: number,
): T | null {
  const distance = ({ testedDiameter }: T) => Math.abs(Math.log(testedDiameter / diameter));
  return sizes.reduce<T | null>(
    (best, size) => (best === null || distance(size) < distance(best) ? size : best),
    null,
  );
}

/** @returns where a rotor of that diameter was tested, for its size correction; null at a tested size, or without one [m] */
export function correctionAt(sizes: readonly TestedAt[], diameter: number): TestedAt | null {
  const nearest = nearestSize(sizes, diameter);
  return nearest && !isSameSize(nearest.testedDiameter, diameter) ? nearest : null;
}

/** What both kinds of reading say of the speeds of a test. */
interface Tested {
  readonly setAside: unknown;
  readonly rpm: number;
  readonly diameter?: number | null;
}

/** @returns the least and the greatest tip speed of the readings in use, those without a size at the first of the tested ones; null where none is in use [m/s] */
export function testedTipSpeeds(
  points: readonly Tested[],
  testedDiameters: readonly number[],
): readonly [number, number] | null {
  const used = points.filter(({ setAside }) => setAside === null);
  const speeds = used.map(({ rpm, diameter }) => tipSpeed(diameter ?? testedDiameters[0], rpm * RPM));
  const [first] = speeds;
  if (first === undefined) return null;
  return speeds.reduce(([low, high], speed) => [Math.min(low, speed), Math.max(high, speed)], [first, first]);
}
