import type { Belief } from "../fit/calibration.ts";
import type { StoredOf } from "../model/record.ts";
import type { Book } from "./book.ts";
import { wheelFriction } from "./frictionBasis.ts";
import { surfaceRoughness } from "./roughnessBasis.ts";

/** A skirt on a surface, in its book. */
export interface Setting {
  readonly book: Book;
  readonly skirt: StoredOf<"skirts">;
  readonly surface: StoredOf<"surfaces">;
}

/** Uncertainty about a gap that nobody stated one for: printed parts to ±0.2 mm unless measured [m]. Common practice, no source. */
const PRINTED = 2e-4;
/** Uncertainty about a friction that nobody stated one for, and the least that a stated one is given [-]. Judgement. */
const USUAL_FRICTION_DOUBT = 0.15;
const LEAST_FRICTION_DOUBT = 0.01;
/** What is held true where nothing is known of the wheels on a surface: rubber slips somewhere there [-]. Judgement. */
export const ANY_FRICTION: Belief = { mean: 0.7, sd: 0.3 };
/** The least uncertainty that a gap is given [m]. Judgement. */
const LEAST_GAP_DOUBT = 1e-6;

/** The roughness allowance takes part in the uncertainty: pulls tell the two together. */
export function gapPrior({ book, skirt, surface }: Setting, ofBuild: number | undefined): Belief {
  const stated = ofBuild ?? skirt.data.uncertainty.gap ?? PRINTED;
  const sd = Math.hypot(stated, surfaceRoughness(book, surface).sd ?? 0);
  return { mean: skirt.data.gap, sd: Math.max(LEAST_GAP_DOUBT, sd) };
}

/** By friction tests of the surface, or by its own figure. */
export function frictionPrior({ book, surface }: Setting): Belief {
  const known = wheelFriction(book, surface, undefined);
  if (known.basis === "missing") return ANY_FRICTION;
  const sd = Math.max(LEAST_FRICTION_DOUBT, known.uncertainty ?? USUAL_FRICTION_DOUBT);
  return { mean: known.value, sd };
}
