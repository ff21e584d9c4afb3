import { type Dimension, type Stack, stackOf } from "./stack.ts";

/** A dimension at another size. */
export interface Change {
  /** place of the dimension [-] */
  readonly place: number;
  /** new size [m] */
  readonly nominal: number;
  /** new less old size, of one piece [m] */
  readonly by: number;
}

/**
 * What each dimension alone would have to be for a stack to close at its worst case.
 *
 *     L' = L − s·c_low/q, c_low the lower worst case, tolerances as they are
 *
 * @param dimensions - nominal and tolerance [m], whether it opens or fills the clearance, pieces [-]
 * @returns for each dimension its change [m]; null where the stack closes, or where the dimension would get smaller than its tolerance
 * @throws {OutOfRangeError} as {@link stackOf}
 *
 * Valid for changes that leave the tolerances. Source: definition; docs/method/fit-up.md, What to change
 */
export function changesThatClose(dimensions: readonly Dimension[]): (Change | null)[] {
  const short = -stackOf(dimensions).worstCase[0];
  return dimensions.map(({ nominal, tolerance, sense, quantity = 1 }, place) => {
    if (!(short > 0)) return null;
    const by = (sense * short) / quantity;
    const changed = nominal + by;
    return changed > 0 && changed >= tolerance ? { place, nominal: changed, by } : null;
  });
}

/**
 * A stack as it would be were one of its dimensions measured, at the size that it is thought to have.
 *
 *     t' = min(t, t_measured)
 *
 * @param dimensions - nominal and tolerance [m], whether it opens or fills the clearance, pieces [-]
 * @param places - of the dimensions that are measured [-]
 * @param tolerance - of a measured size [m]
 * @returns the stack [m]
 * @throws {OutOfRangeError} as {@link stackOf}
 *
 * Valid where the measured size is the nominal one. Source: docs/method/fit-up.md, Print advice
 */
export function measuredAt(
  dimensions: readonly Dimension[],
  places: readonly number[],
  tolerance: number,
): Stack {
  return stackOf(
    dimensions.map((each, i) =>
      places.includes(i) ? { ...each, tolerance: Math.min(each.tolerance, tolerance) } : each,
    ),
  );
}
