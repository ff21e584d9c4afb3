import { OutOfRangeError } from "../../numeric/errors.ts";
import type { AnyPredictInput } from "../../physics/predictAny.ts";
import type { PropellerInput } from "../../physics/propellerLaw.ts";
import type { SkirtInput } from "../../physics/skirt.ts";
import type { RotorBody } from "../limits/input.ts";
import type { SizeBuild } from "./input.ts";

/** @returns whether an open propeller presses the vehicle on */
export function isOpen(rotor: SizeBuild["rotor"]): rotor is PropellerInput {
  return "thrust" in rotor;
}

/** @returns the skirt that a ducted rotor needs @throws {OutOfRangeError} where there is none */
export function skirtOf({ skirt }: Pick<SizeBuild, "skirt">): SkirtInput {
  if (!skirt) throw new OutOfRangeError("skirt", Number.NaN, "a skirt: perimeter, area, gap, land");
  return skirt;
}

/** @returns a rotor of the family at another diameter [m]; a propeller's chord grows with it */
export function rotorAt(
  { rotor, rotorAt: family }: Pick<SizeBuild, "rotor" | "rotorAt">,
  diameter: number,
): SizeBuild["rotor"] {
  if (family) return family(diameter);
  if (!isOpen(rotor)) return { ...rotor, diameter };
  return { ...rotor, diameter, chord: (rotor.chord * diameter) / rotor.diameter };
}

/** @returns the rotor's body at another diameter: its blades of one shape, its bore as it is [m, kg] */
export function bodyAt(body: RotorBody | null, reference: number, diameter: number): RotorBody | null {
  if (!body?.blades) return body;
  const scale = diameter / reference;
  const { mass, radius, rimThickness, count } = body.blades;
  const blades = {
    mass: mass * scale ** 3,
    radius: radius * scale,
    rimThickness: rimThickness * scale,
    count,
  };
  return { ...body, blades };
}

/**
 * A size and a winding put back as a build.
 *
 *     D, K_v and R₂₀ in the place of the family and the frame, all else kept
 *
 * @param build - of the question, SI
 * @param diameter - D [m]
 * @param winding - K_v [rpm/V], R₂₀ [Ω]
 * @returns the build, as a prediction takes it
 * @throws {OutOfRangeError} on a ducted rotor without a skirt
 *
 * Valid for any winding. Source: definition
 */
export function sizedBuild(
  build: SizeBuild,
  diameter: number,
  winding: { readonly kv: number; readonly resistance: number },
): AnyPredictInput {
  const { motorConstant: _strength, ...friction } = build.motor;
  const { air, pack, supply, vehicle } = build;
  const motor = { ...friction, kv: winding.kv, resistance: winding.resistance };
  const rest = { air, motor, pack, supply, vehicle };
  const rotor = rotorAt(build, diameter);
  return isOpen(rotor) ? { ...rest, rotor } : { ...rest, rotor, skirt: skirtOf(build) };
}
