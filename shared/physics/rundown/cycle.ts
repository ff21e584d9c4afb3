import { OutOfRangeError, requireNonNegative } from "../../numeric/errors.ts";
import type { SupplyInput } from "../point/machine.ts";

/** One part of a drive cycle: where the vehicle is, for what share of the time, and what its drive draws there. */
export interface CycleSegment {
  /** θ of the surface [°] */
  readonly angle: number;
  /** of the time, above 0; all together 1 [-] */
  readonly share: number;
  /** of the drive's motors, out of the pack, beside the other loads [A] */
  readonly driveCurrent: number;
  /** false: parked, its drive draws nothing; true unless given */
  readonly moving?: boolean;
}

/** A load on the pack that a cycle brings again and again. */
export interface CycleLoad {
  /** [A] */
  readonly driveCurrent: number;
  /** of the time [-] */
  readonly share: number;
}

/** Under which of a cycle's loads an attitude is judged, and how. */
export interface Judged {
  /** index of the load */
  readonly load: number;
  /** the vehicle is only ever parked there: climb does not count */
  readonly parked: boolean;
}

/** Shares are typed with a few digits: a third three times over is 0.999. */
const SHARE_SLACK = 1e-3;
/** A segment's angle meets an attitude's within this [°]. */
const SAME_ANGLE = 0.05;

/**
 * Stops at a drive cycle that can't be.
 *
 *     Σ share = 1; 0° ≤ θ ≤ 180°; I ≥ 0, and 0 where parked
 *
 * @param cycle - segments [°, -, A]
 * @returns nothing
 * @throws {OutOfRangeError} with the path of a number that can't be; with the sum where the shares are not the whole
 *
 * Valid for any input. Source: definitions
 */
export function checkCycle(cycle: readonly CycleSegment[]): void {
  for (const [i, { angle, share, driveCurrent, moving }] of cycle.entries()) {
    if (!(angle >= 0 && angle <= 180)) throw new OutOfRangeError(`cycle.${i}.angle`, angle, "0 to 180");
    if (!(share > 0 && share <= 1)) throw new OutOfRangeError(`cycle.${i}.share`, share, "above 0, up to 1");
    requireNonNegative(`cycle.${i}.driveCurrent`, driveCurrent);
    if (moving === false && driveCurrent > 0)
      throw new OutOfRangeError(`cycle.${i}.driveCurrent`, driveCurrent, "0 where the vehicle is parked");
  }
  const sum = cycle.reduce((total, { share }) => total + share, 0);
  if (!sharesAreWhole(sum)) throw new OutOfRangeError("cycle", sum, "shares that add up to 1");
}

/** @returns whether another angle [°] is the same place for a drive cycle */
export const atAngle =
  (angle: number) =>
  (other: number): boolean =>
    Math.abs(other - angle) < SAME_ANGLE;

/** @returns true where the shares of a cycle add up to the whole, as near as they are typed */
export function sharesAreWhole(sum: number): boolean {
  return Math.abs(sum - 1) <= SHARE_SLACK;
}

/**
 * The different loads of a cycle, each with its part of the time.
 *
 *     s_k = Σ share of the segments that draw I_k, over the sum of all shares
 *
 * @param cycle - segments, checked [°, -, A]
 * @returns loads by rising current; their shares add up to 1 exactly but for rounding [A, -]
 *
 * Valid for cycles of {@link checkCycle}. Source: definition
 */
export function loadsOf(cycle: readonly CycleSegment[]): CycleLoad[] {
  const total = cycle.reduce((sum, { share }) => sum + share, 0);
  const currents = [...new Set(cycle.map(({ driveCurrent }) => driveCurrent))].sort((a, b) => a - b);
  return currents.map((driveCurrent) => {
    const of = cycle.filter((segment) => segment.driveCurrent === driveCurrent);
    return { driveCurrent, share: of.reduce((sum, { share }) => sum + share, 0) / total };
  });
}

/**
 * Under which load of the cycle an attitude is judged.
 *
 *     the heaviest of the segments at that attitude; of all segments where the cycle never goes there
 *
 * @param cycle - segments, checked [°, -, A]
 * @param angle - θ [°]
 * @returns index into {@link loadsOf} [-], and whether the vehicle is only ever parked there
 *
 * Valid for cycles of {@link checkCycle}. Source: docs/method/run-down.md
 */
export function judgedAt(cycle: readonly CycleSegment[], angle: number): Judged {
  const there = cycle.filter((segment) => atAngle(angle)(segment.angle));
  const counted = there.length > 0 ? there : cycle;
  const most = counted.reduce((current, { driveCurrent }) => Math.max(current, driveCurrent), 0);
  const load = loadsOf(cycle).findIndex(({ driveCurrent }) => driveCurrent === most);
  return { load, parked: there.length > 0 && there.every(({ moving }) => moving === false) };
}

/** @returns the build while it draws one load of its cycle beside the others [-] */
export function underLoad<T extends { readonly supply: SupplyInput }>(
  input: T,
  { driveCurrent }: CycleLoad,
): T & { readonly cycle: undefined } {
  const { supply } = input;
  return {
    ...input,
    cycle: undefined,
    supply: { ...supply, auxCurrent: supply.auxCurrent + driveCurrent },
  };
}
