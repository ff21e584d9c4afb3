import type { Build } from "../../model/build.ts";
import type { Book } from "../book.ts";
import { ledgerOf } from "./ledger.ts";

/** A build whose mass is a number, whatever it comes from. */
export type BuildWithMass = Build & { readonly vehicle: { readonly mass: number } };

const hasMass = (build: Build): build is BuildWithMass => build.vehicle.mass !== undefined;

/**
 * A build with the mass that counts: the number typed for everything on board, else the sum of its parts and lines, with its uncertainty.
 *
 * @param book - of its parts
 * @param build - a stored build, or one changed by what-if settings
 * @returns the build, ready for whatever needs its mass [kg]
 */
export function withMass(book: Book, build: Build): BuildWithMass {
  if (hasMass(build)) return build;
  const { value, uncertainty } = ledgerOf(book, build).mass;
  const { "vehicle.mass": _ofNoWhole, ...others } = build.uncertainty;
  return {
    ...build,
    vehicle: { ...build.vehicle, mass: value },
    uncertainty: uncertainty > 0 ? { ...others, "vehicle.mass": uncertainty } : others,
  };
}
