import { findById } from "../book.ts";
import { withMass } from "../mass/withMass.ts";
import { rotorMass } from "../rotorSize.ts";
import type { Context } from "./context.ts";

/** @returns mass of the build's own skirt, 0 without one [kg]; null where it isn't weighed: it then stays in the vehicle's mass, whatever skirt is chosen */
export function skirtMass({ book, build }: Pick<Context, "book" | "build">): number | null {
  if (build.skirt === null) return 0;
  return findById(book.skirts, build.skirt)?.data.mass || null;
}

/**
 * Mass of a build without the parts that are chosen: motor, rotor, pack and skirt.
 *
 *     m − m_motor − m_rotor − m_pack − m_skirt;  a skirt that isn't weighed stays in
 *
 * @param context - the book and the build [kg]
 * @returns the rest [kg]; what is missing is gathered as unusable
 */
export function bareMass({ book, build, unusable }: Context): number {
  const rotor = findById(book.rotors, build.rotor)?.data;
  const parts = {
    motor: findById(book.motors, build.motor)?.data.mass,
    rotor: rotor && (rotorMass(rotor, build.diameter) ?? undefined),
    pack: findById(book.packs, build.pack)?.data.mass,
    skirt: skirtMass({ book, build }) ?? 0,
  };
  const { mass } = withMass(book, build).vehicle;
  let bare = mass;
  for (const [part, own] of Object.entries(parts)) {
    if (own === undefined) {
      const message = `The ${part} of ${build.name} has no mass, so the vehicle without it can't be weighed: weigh the ${part}.`;
      unusable.push({ path: "build", message });
    }
    bare -= own ?? 0;
  }
  if (bare > 0) return bare;
  const message = `${build.name} weighs less than its motor, rotor, pack and skirt together: correct its mass.`;
  unusable.push({ path: "build", message });
  return mass;
}
