import type { Build } from "../../model/build.ts";
import type { Book } from "../book.ts";
import { balanceOf } from "./balance.ts";
import { ledgerOf } from "./ledger.ts";

/** A build whose mass is a number, whatever it comes from. */
export type BuildWithMass = Build & { readonly vehicle: { readonly mass: number } };

const hasMass = (build: Build): build is BuildWithMass => build.vehicle.mass !== undefined;

/** The number typed for everything on board, else the sum of its parts and lines, with its uncertainty. */
function massed(book: Book, build: Build): BuildWithMass {
  if (hasMass(build)) return build;
  const { value, uncertainty } = ledgerOf(book, build).mass;
  const { "vehicle.mass": _ofNoWhole, ...others } = build.uncertainty;
  return {
    ...build,
    vehicle: { ...build.vehicle, mass: value },
    uncertainty: uncertainty > 0 ? { ...others, "vehicle.mass": uncertainty } : others,
  };
}

/**
 * A build with the mass that counts, and with the centre of gravity that counts: that of its parts' places where every one has a place, else the one typed.
 *
 * @param book - of its parts
 * @param build - a stored build, or one changed by what-if settings
 * @returns the build, ready for whatever needs its mass [kg] and its centre of gravity [m]
 */
export function withMass(book: Book, build: Build): BuildWithMass {
  const whole = massed(book, build);
  const { centre, isWhole } = balanceOf(book, build);
  if (!isWhole || centre === null) return whole;
  return { ...whole, vehicle: { ...whole.vehicle, cgFromRear: centre.fromRear, cgHeight: centre.height } };
}
