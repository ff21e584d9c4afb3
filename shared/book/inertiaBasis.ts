import type { Build } from "../model/build.ts";
import { bellInertia, discInertia } from "../physics/inertia.ts";
import { type Book, findById } from "./book.ts";
import { rotorMass } from "./rotorSize.ts";

/** What turns on when the power goes, and where its figure comes from. */
export type InertiaBasis =
  | {
      readonly basis: "typed" | "estimated";
      /** of rotor and motor together [kg·m²] */
      readonly value: number;
      /** how it is estimated, in words; empty where it is typed */
      readonly from: string;
    }
  | { readonly basis: "missing"; readonly message: string };

const WITHOUT_MOTOR = "without the motor, whose mass and diameter aren't stated";

function estimated(book: Book, build: Build): InertiaBasis {
  const rotor = findById(book.rotors, build.rotor)?.data;
  const motor = findById(book.motors, build.motor)?.data;
  const mass = rotor ? rotorMass(rotor, build.diameter) : null;
  if (!rotor || mass === null)
    return { basis: "missing", message: "The rotor's mass isn't known: weigh it, on the rotor's page." };
  const ofRotor = discInertia(mass, build.diameter, rotor.material?.boreDiameter ?? 0);
  if (motor?.mass === undefined || motor.diameter === undefined)
    return { basis: "estimated", value: ofRotor, from: `the rotor's mass as a disc, ${WITHOUT_MOTOR}` };
  const value = ofRotor + bellInertia(motor.mass, motor.diameter);
  return { basis: "estimated", value, from: "the rotor's mass as a disc, the motor's bell from its mass" };
}

/**
 * The inertia that turns on when the power goes.
 *
 * @param book - the whole bench book
 * @param build - a stored build, or one changed by what-if handles
 * @returns as the build types it [kg·m²], else from the masses of rotor and motor; what is missing where the rotor isn't weighed
 */
export function inertiaBasis(book: Book, build: Build): InertiaBasis {
  if (build.inertia !== undefined) return { basis: "typed", value: build.inertia, from: "" };
  return estimated(book, build);
}
