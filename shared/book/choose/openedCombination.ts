import type { Combination } from "../../decide/choose/result.ts";
import type { Build } from "../../model/build.ts";
import { type Book, findById } from "../book.ts";
import { calibrationOf } from "../calibration.ts";
import { gapBasis } from "../gapBasis.ts";

/** A chosen combination, as much of it as a build needs. */
export interface CombinationChoice extends Pick<Combination, "parts" | "diameter" | "gap" | "duty"> {
  /** whole vehicle [kg]; null: not known */
  readonly mass: number | null;
}

/** Gaps closer than this are the same one [m]. */
const SAME_GAP = 1e-9;

/**
 * A chosen combination as a build, to be looked at and kept.
 *
 *     the build that gave the rest, with the combination's parts and its mass, which is the sum again where the base's is; its gap is tried only where it isn't the skirt's own
 *
 * @param book - the whole bench book
 * @param base - the build that gave vehicle, air, supply and surface
 * @param combination - parts, sizes [m], duty [-], mass [kg]
 * @returns a build that predicts what the combination was chosen for
 */
export function buildOfCombination(book: Book, base: Build, combination: CombinationChoice): Build {
  const build: Build = {
    ...base,
    ...combination.parts,
    diameter: combination.diameter,
    supply: { ...base.supply, duty: combination.duty },
    vehicle:
      base.vehicle.mass === undefined
        ? base.vehicle
        : { ...base.vehicle, mass: combination.mass ?? base.vehicle.mass },
    overrides: {},
  };
  if (combination.gap === null) return build;
  const own = gapBasis(build, findById(book.skirts, combination.parts.skirt), calibrationOf(book, build));
  if (Math.abs(own.value - combination.gap) < SAME_GAP) return build;
  return { ...build, overrides: { gap: combination.gap } };
}
