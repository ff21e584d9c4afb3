import type { Build } from "../../model/build.ts";
import { type Book, findById } from "../book.ts";
import { calibrationOf } from "../calibration.ts";
import { gapBasis } from "../gapBasis.ts";

/** A chosen set, as much of it as a build needs. */
export interface SetChoice {
  readonly parts: {
    readonly motor: string;
    readonly rotor: string;
    readonly pack: string;
    /** null: a propeller without one */
    readonly skirt: string | null;
  };
  /** [m] */
  readonly diameter: number;
  /** [m]; null: a propeller, whatever the gap */
  readonly gap: number | null;
  readonly duty: number;
  /** whole vehicle [kg]; null: not known */
  readonly mass: number | null;
}

/** Gaps closer than this are the same one [m]. */
const SAME_GAP = 1e-9;

/**
 * A chosen set as a build, to be looked at and kept.
 *
 *     the build that gave the rest, with the set's parts and its mass, which is the sum again where the base's is; its gap is tried only where it isn't the skirt's own
 *
 * @param book - the whole bench book
 * @param base - the build that gave vehicle, air, supply and surface
 * @param set - parts, sizes [m], duty [-], mass [kg]
 * @returns a build that predicts what the set was chosen for
 */
export function buildOfSet(book: Book, base: Build, set: SetChoice): Build {
  const build: Build = {
    ...base,
    ...set.parts,
    diameter: set.diameter,
    supply: { ...base.supply, duty: set.duty },
    vehicle:
      base.vehicle.mass === undefined
        ? base.vehicle
        : { ...base.vehicle, mass: set.mass ?? base.vehicle.mass },
    overrides: {},
  };
  if (set.gap === null) return build;
  const own = gapBasis(build, findById(book.skirts, set.parts.skirt), calibrationOf(book, build));
  if (Math.abs(own.value - set.gap) < SAME_GAP) return build;
  return { ...build, overrides: { gap: set.gap } };
}
